package org.stepwell.privacy;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.FamilyRequest.Happened;
import org.stepwell.privacy.FamilyRequest.Kind;
import org.stepwell.privacy.FamilyRequest.Step;

/**
 * Requests of families on the records of their child. Adults of the class write down what was asked; what becomes of it is
 * decided by a lead.
 */
@Service
@Transactional
public class FamilyRequestService {
    private static final int MOST_WORDS = 4000;

    private final FamilyRequestStore store;
    private final AccessRecordService record;
    private final Access access;
    private final CurrentAdult current;

    FamilyRequestService(FamilyRequestStore store, AccessRecordService record, Access access, CurrentAdult current) {
        this.store = store;
        this.record = record;
        this.access = access;
        this.current = current;
    }

    /**
     * Statements of the family on records of the child, in order of the requests: whoever is shown the record is shown
     * them (34 CFR 99.21 (c)).
     *
     * @throws NotVisible when the child may not be seen
     */
    public List<Step> statements(UUID childId) {
        access.requireChild(childId);
        return store.of(childId).stream().flatMap(request -> request.statements().stream()).toList();
    }

    /**
     * All requests on a child, oldest first.
     *
     * @throws NotVisible when the adult is neither of the child's class nor a lead
     */
    public List<FamilyRequest> requests(UUID childId) {
        requireWhole(childId);
        return store.of(childId);
    }

    /** Whether the signed-in adult decides on requests: leads of a school of the child. */
    public boolean decides(UUID childId) {
        return access.leads(childId);
    }

    /**
     * Writes down what a family asked.
     *
     * @param on day they asked, not after today
     * @param words what should read otherwise and how; may be empty for a wish to see the records
     * @return the request's id
     * @throws NotVisible when the adult is neither of the child's class nor a lead
     * @throws Refused when something is missing or the day lies ahead
     */
    public UUID ask(UUID childId, Kind kind, LocalDate on, String words) {
        requireWhole(childId);
        if (kind == Kind.AMEND && words.isBlank()) {
            throw new Refused("request.words");
        }
        SignedIn adult = current.get();
        return store.add(adult.districtId(), childId, kind, past(on), kept(words), adult.adultId());
    }

    /**
     * Writes down what became of a request.
     *
     * @param seen how many steps the adult saw, so that two do not decide past each other
     * @param on day it happened, not after today
     * @param words reason of a decision, or the statement as it was given
     * @throws NotVisible when the adult is no lead of a school of the child, or no such request is on it
     * @throws Refused when it cannot come next, words are missing, or somebody else was first
     */
    public void happened(UUID childId, UUID requestId, int seen, Happened what, LocalDate on, String words) {
        access.requireLead(childId);
        FamilyRequest request = store.of(childId).stream().filter(r -> r.requestId().equals(requestId)).findFirst()
                .orElseThrow(NotVisible::new);
        if (request.steps().size() != seen) {
            throw new Refused("request.other");
        }
        if (!request.next().contains(what)) {
            throw new Refused("request.next");
        }
        if (what.needsWords() && words.isBlank()) {
            throw new Refused("request.why");
        }
        SignedIn adult = current.get();
        if (!store.add(adult.districtId(), requestId, seen + 1, new Step(what, past(on), kept(words), adult.name()),
                adult.adultId())) {
            throw new Refused("request.other");
        }
    }

    private void requireWhole(UUID childId) {
        if (!record.mayRead(childId)) {
            throw new NotVisible();
        }
    }

    private LocalDate past(LocalDate on) {
        if (on.isAfter(current.today())) {
            throw new Refused("request.day");
        }
        return on;
    }

    private static String kept(String words) {
        String plain = words.strip().replace("\u0000", "");
        if (plain.length() > MOST_WORDS) {
            throw new Refused("request.long", plain.length() + "", MOST_WORDS + "");
        }
        return plain;
    }
}
