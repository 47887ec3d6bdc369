package org.stepwell.records;

import java.util.UUID;
import org.springframework.stereotype.Service;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.platform.store.OwnerConnections;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.ErasedIds;
import org.stepwell.privacy.NotVisible;
import org.stepwell.records.Erasure.Preview;
import org.stepwell.records.Erasure.Why;

/** Erasure of a child by order of a lead of its school, also of one who left. */
@Service
public class ErasureService {
    private final Erasure erasure;
    private final Access access;
    private final CurrentAdult current;

    ErasureService(OwnerConnections connections, ErasedIds ids, Access access, CurrentAdult current) {
        this.erasure = new Erasure(connections, ids);
        this.access = access;
        this.current = current;
    }

    /**
     * What erasing the child would do; changes nothing.
     *
     * @throws NotVisible when the adult is no lead of a school of the child, or there is no such child
     */
    public Preview preview(UUID childId) {
        return erasure.preview(target(childId));
    }

    /**
     * Erases the child for good.
     *
     * @param typedKey the school's own id of the child, typed by hand so that nobody erases by a slip
     * @return rows removed
     * @throws NotVisible when the adult is no lead of a school of the child, or there is no such child
     * @throws Refused when the id is not that of the child, or a request of the family is open
     */
    public int erase(UUID childId, String typedKey, Why why) {
        ErasureTarget target = target(childId);
        if (!target.schoolKey().equals(typedKey.strip())) {
            throw new Refused("erasure.key");
        }
        return erasure.erase(target, why, current.get().adultId());
    }

    private ErasureTarget target(UUID childId) {
        access.requireLead(childId);
        SignedIn adult = current.get();
        return erasure.target(adult.districtId(), childId).orElseThrow(NotVisible::new);
    }
}
