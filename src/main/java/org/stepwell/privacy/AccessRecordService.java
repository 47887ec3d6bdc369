package org.stepwell.privacy;

import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.platform.csv.CsvWriter;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.AccessRecordStore.Head;
import org.stepwell.privacy.AccessRecordStore.Interest;

/**
 * The record of access to each child: requests and disclosures with party, interest and time (34 CFR 99.32 (a)(1) and
 * (3), 300.614), views by staff too, which the law does not ask for, and what was denied. Lines are written before
 * anything is shown; a line that cannot be written keeps it from being shown.
 */
@Service
@Transactional
public class AccessRecordService {
    private static final int KEY_BYTES = 32;
    private static final int ALL = Integer.MAX_VALUE;
    private static final Interest NONE = new Interest("none", null);
    /** Part of a lead in a child who left the school. */
    private static final Interest LEAD = new Interest("lead", null);
    private static final SecureRandom RANDOM = new SecureRandom();

    private final AccessRecordStore store;
    private final Access access;
    private final CurrentAdult current;
    private final Clock clock;

    AccessRecordService(AccessRecordStore store, Access access, CurrentAdult current, Clock clock) {
        this.store = store;
        this.access = access;
        this.current = current;
        this.clock = clock;
    }

    /**
     * Writes down that something of a child is given to the signed-in adult, in the transaction of the caller.
     *
     * @throws NotVisible when the child may not be seen; nothing is written then
     */
    public void seen(UUID childId, Seen what) {
        seen(List.of(childId), what);
    }

    /** The same for each of several children. */
    public void seen(Collection<UUID> children, Seen what) {
        Set<UUID> seen = access.children();
        if (!children.stream().allMatch(child -> seen.contains(child) || access.leads(child))) {
            throw new NotVisible();
        }
        write(children.stream().distinct().sorted().toList(), what, true);
    }

    /**
     * The same for the children a file names by the school's own ids, those who left since too.
     *
     * @param classId class of the file, which the adult must see whole
     */
    public void filed(UUID classId, Collection<String> schoolKeys, Seen what) {
        access.requireClass(classId);
        write(store.everIn(classId, store.idsOf(schoolKeys)), what, true);
    }

    /** The same for the children of a closed review of a class, which the adult must see whole. */
    public void printed(UUID classId, Collection<UUID> children) {
        access.requireClass(classId);
        write(store.everIn(classId, children), Seen.REVIEW_PRINT, true);
    }

    /**
     * Writes down that something was asked for and not given. For a child who does not exist a line about nobody is
     * written, so that the two cannot be told apart by how long the answer takes. Called after the refused transaction
     * is over, since that takes its lines with it.
     */
    public void denied(UUID childId, Seen what) {
        write(List.of(childId), what, false);
    }

    /** The same for a child by the school's own id. */
    public void denied(String schoolKey, Seen what) {
        denied(store.idsOf(List.of(schoolKey)).stream().findFirst().orElseGet(UUID::randomUUID), what);
    }

    private void write(List<UUID> children, Seen what, boolean given) {
        if (children.isEmpty()) {
            return;
        }
        SignedIn adult = current.get();
        Instant at = clock.instant().truncatedTo(ChronoUnit.MICROS);
        List<String> digests = new ArrayList<>();
        List<Interest> interests = new ArrayList<>();
        for (UUID child : children) {
            byte[] fresh = new byte[KEY_BYTES];
            RANDOM.nextBytes(fresh);
            digests.add(AccessChain.child(store.key(adult.districtId(), child, fresh).orElse(fresh), child));
            interests.add(given ? store.interest(adult.adultId(), child, current.today())
                    .orElseGet(() -> access.leads(child) ? LEAD : NONE) : NONE);
        }
        // From here to the end of the transaction no other line of the district is written: nothing slow comes after.
        Head head = store.lockHead(adult.districtId());
        for (int i = 0; i < children.size(); i++) {
            Interest interest = interests.get(i);
            AccessChain.Line line = new AccessChain.Line(adult.districtId(), head.seq() + 1, at, adult.adultId(),
                    what.code(), given ? "given" : "denied", what.party(), interest.word(), interest.grantId(),
                    digests.get(i), head.digest());
            head = new Head(line.seq(), line.digest());
            store.add(line, head.digest());
        }
        store.moveHead(adult.districtId(), head.seq(), head.digest());
    }

    /**
     * Everybody who can see the child today: adults of its classes first, then those it is shared with, then leads.
     *
     * @throws NotVisible when the adult may not see the child
     */
    public List<Reader> readers(UUID childId) {
        access.requireChild(childId);
        return store.readers(childId, current.today());
    }

    /**
     * Whether the signed-in adult may read the record of the child: adults of its class and leads may, leads also that of
     * one who left their school.
     */
    public boolean mayRead(UUID childId) {
        return access.leads(childId) || access.children().contains(childId) && store.interest(current.get().adultId(), childId,
                current.today()).filter(part -> part.grantId() == null).isPresent();
    }

    /**
     * The newest lines on a child, newest first.
     *
     * @param most how many at most
     * @throws NotVisible when the adult may not read the record of the child
     */
    public List<AccessLine> lines(UUID childId, int most) {
        if (!mayRead(childId)) {
            throw new NotVisible();
        }
        return store.key(childId).map(key -> store.lines(AccessChain.child(key, childId), most,
                current.get().zone())).orElseGet(List::of);
    }

    /**
     * The whole record of a child as CSV, oldest line first; the line about this very file is its last.
     *
     * @param schoolKey the school's own id of the child
     * @throws NotVisible when there is no such child or its record may not be read
     */
    public String csv(String schoolKey) {
        UUID childId = store.idsOf(List.of(schoolKey)).stream().findFirst().orElseThrow(NotVisible::new);
        if (!mayRead(childId)) {
            throw new NotVisible();
        }
        seen(childId, Seen.RECORD_FILE);
        CsvWriter out = new CsvWriter(List.of("line", "at", "adult", "what", "outcome", "party", "interest", "reason",
                "digest"));
        lines(childId, ALL).reversed().forEach(line -> out.row(line.seq(), line.at(), line.adult(), line.what(),
                line.given() ? "given" : "denied", line.party(), line.interest(), line.reason(), line.digest()));
        return out.toString();
    }
}
