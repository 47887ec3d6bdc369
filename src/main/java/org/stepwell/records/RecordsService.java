package org.stepwell.records;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.AccessLine;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Seen;

/**
 * All records on a child for a parent to inspect (34 CFR 99.10, and 300.613 for a child with a disability). What names
 * other children stays out (99.12 (a)).
 */
@Service
@Transactional
public class RecordsService {
    private final RecordsStore store;
    private final AccessRecordService record;
    private final Access access;
    private final CurrentAdult current;

    RecordsService(RecordsStore store, AccessRecordService record, Access access, CurrentAdult current) {
        this.store = store;
        this.record = record;
        this.access = access;
        this.current = current;
    }

    /** For whom the bundle is made. */
    public enum Purpose {
        /** A parent inspects it: 34 CFR 99.10. */
        INSPECT,
        /** It goes along to the school the child moves to: 34 CFR 99.31 (a)(2), 99.34. */
        TRANSFER;

        Seen seen() {
            return this == INSPECT ? Seen.ALL_RECORDS : Seen.TRANSFER;
        }

        String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Whether the signed-in adult may have the bundle made: adults of the child's class and leads. */
    public boolean mayBundle(UUID childId) {
        return record.mayRead(childId);
    }

    /**
     * Everything as one zip; that it was made is written into the record of access and stands in it as the last line.
     *
     * @param schoolKey the school's own id of the child; of one who left, for leads of its school
     * @param purpose for whom
     * @param language language of the readable part
     * @throws NotVisible when there is no such child or the bundle may not be had
     */
    public byte[] bundle(String schoolKey, Purpose purpose, Language language) {
        UUID childId = store.idOf(schoolKey).filter(record::mayRead).orElseThrow(NotVisible::new);
        SignedIn adult = current.get();
        Map<UUID, String> names = store.names();
        Map<RecordKind, List<Map<String, @Nullable Object>>> rows = new LinkedHashMap<>();
        for (RecordKind kind : RecordKind.values()) {
            if (kind != RecordKind.ACCESS) {
                rows.put(kind, store.rows(kind, childId, names, adult.zone()));
            }
        }
        record.seen(childId, purpose.seen());
        rows.put(RecordKind.ACCESS, record.lines(childId, Integer.MAX_VALUE).reversed().stream()
                .map(RecordsService::told).toList());
        return new RecordsBundle(new ChildRecords(store.name(childId), purpose, adult.name(), current.today(), rows), language).zip();
    }

    /**
     * Children whose records the signed-in adult has a part in: a lead all who are or were in the school, others those of
     * their classes; requests that wait longest first, then by name.
     */
    public List<KeptChild> kept() {
        SignedIn adult = current.get();
        return store.kept(access.classes(), adult.lead() ? adult.schoolId() : null, current.today());
    }

    private static Map<String, @Nullable Object> told(AccessLine line) {
        Map<String, @Nullable Object> cells = new LinkedHashMap<>();
        cells.put("line", line.seq());
        cells.put("at", line.at().toString());
        cells.put("adult", line.adult());
        cells.put("what", line.what());
        cells.put("outcome", line.given() ? "given" : "denied");
        cells.put("party", line.party());
        cells.put("interest", line.interest());
        cells.put("reason", line.reason());
        cells.put("digest", line.digest());
        return cells;
    }
}
