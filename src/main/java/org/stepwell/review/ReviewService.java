package org.stepwell.review;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.tier.ReviewOrder;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.Verdict;
import org.stepwell.observation.ObservationService;
import org.stepwell.pacing.PacingService;
import org.stepwell.pacing.UnitInHand;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.FamilyRequest;
import org.stepwell.privacy.FamilyRequestService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;
import org.stepwell.tier.TierService;

/** One sitting per class and week: choices while it is open, a seal when it is closed. */
@Service
@Transactional
public class ReviewService {
    private final ReviewStore store;
    private final RosterService roster;
    private final TierService tiers;
    private final PacingService pacing;
    private final ObservationService observations;
    private final Access access;
    private final AccessRecordService record;
    private final FamilyRequestService requests;
    private final CurrentAdult current;
    private final SealText seals;

    ReviewService(ReviewStore store, RosterService roster, TierService tiers, PacingService pacing, ObservationService observations,
            Access access, AccessRecordService record, FamilyRequestService requests, CurrentAdult current, SealText seals) {
        this.store = store;
        this.roster = roster;
        this.tiers = tiers;
        this.pacing = pacing;
        this.observations = observations;
        this.access = access;
        this.record = record;
        this.requests = requests;
        this.current = current;
        this.seals = seals;
    }

    /** Why a choice or a closing was not taken, in words of the screen. */
    public static final class Refused extends RuntimeException {
        /** Reasons. */
        public enum Why {
            /** Another adult chose for this child meanwhile. */
            CHOSEN_MEANWHILE,
            /** The review is closed. */
            CLOSED,
            /** Another tier and a deferral need a reason. */
            REASON_MISSING,
            /** A deferral needs a later day. */
            DAY_MISSING,
            /** Some children have no choice yet. */
            CHILDREN_LEFT,
            /** The class has no unit. */
            NO_UNIT
        }

        private final Why why;

        Refused(Why why) {
            super(why.name());
            this.why = why;
        }

        /** The reason. */
        public Why why() {
            return why;
        }
    }

    /** Classes whose reviews this adult may see and that have a unit. */
    public List<Classroom> mine() {
        return roster.classes().stream().filter(room -> access.classes().contains(room.classId())
                && pacing.unit(room.classId()).isPresent()).toList();
    }

    private UnitInHand unit(UUID classId) {
        return pacing.unit(classId).orElseThrow(() -> new Refused(Refused.Why.NO_UNIT));
    }

    private LocalDate week() {
        return current.today().with(DayOfWeek.MONDAY);
    }

    /**
     * This week's review: begun now, or gone on with where it was left, on whatever device and by whichever adult.
     *
     * @return empty when it is closed already
     * @throws NotVisible when the adult has no part in the class
     * @throws Refused when the class has no unit
     */
    public Optional<OpenReview> open(UUID classId) {
        access.requireClass(classId);
        UnitInHand unit = unit(classId);
        SignedIn adult = current.get();
        store.open(adult.districtId(), classId, unit.unitId(), week(), adult.adultId());
        ReviewStore.Opened opened = store.find(classId, unit.unitId(), week()).orElseThrow(NotVisible::new);
        List<SealedReview> sealed = sealed(classId);
        if (sealed.stream().anyMatch(s -> s.reviewId().equals(opened.reviewId()))) {
            return Optional.empty();
        }
        ClassPicture picture = tiers.picture(classId);
        Optional<SealedReview> last = sealed.stream().findFirst();
        Map<UUID, String> keys = picture.children().stream()
                .collect(Collectors.toMap(c -> c.row().childId(), c -> c.row().schoolKey()));
        Map<String, Verdict> before = new HashMap<>();
        last.ifPresent(review -> review.children().stream().filter(line -> keys.containsKey(line.childId())).forEach(
                line -> before.put(keys.get(line.childId()), Verdict.valueOf(line.verdict()
                        .toUpperCase(Locale.ROOT)))));
        List<String> asked = picture.children().stream().filter(c -> !c.state().open().isEmpty())
                .map(c -> c.row().schoolKey()).toList();
        return Optional.of(new OpenReview(opened.reviewId(), opened.week(), picture,
                ReviewOrder.of(picture.review(), before, asked, opened.reviewId().getMostSignificantBits()),
                store.choices(opened.reviewId()), last));
    }

    /**
     * Takes a choice.
     *
     * @param turn one more than the turns the adult has seen on this child, so that nobody overwrites unseen
     * @param until only when deferred
     * @throws Refused when it was not taken; nothing is stored then
     */
    public void choose(UUID classId, UUID childId, int turn, Choice.Kind kind, @Nullable Tier tier,
            @Nullable LocalDate until, String reason) {
        OpenReview review = open(classId).orElseThrow(() -> new Refused(Refused.Why.CLOSED));
        store.lock(review.reviewId());
        OneChild child = review.picture().children().stream().filter(c -> c.row().childId().equals(childId))
                .findFirst().orElseThrow(NotVisible::new);
        add(review, child, turn, kind, tier, until, reason);
    }

    /** Keeps the tier in force for all children named that have no choice yet. */
    public void keepAll(UUID classId, List<UUID> children) {
        OpenReview review = open(classId).orElseThrow(() -> new Refused(Refused.Why.CLOSED));
        store.lock(review.reviewId());
        review.left().stream().filter(c -> children.contains(c.row().childId()))
                .forEach(c -> add(review, c, review.turns(c.row().childId()) + 1, Choice.Kind.KEEP, null, null, ""));
    }

    private void add(OpenReview review, OneChild child, int turn, Choice.Kind kind, @Nullable Tier chosen,
            @Nullable LocalDate until, String reason) {
        Suggestion suggestion = review.suggestion(child);
        Tier tier = switch (kind) {
            case ACCEPT -> suggestion.suggested();
            case KEEP, DEFER -> child.state().tier();
            case OTHER, OWN_CALL -> chosen == null ? child.state().tier() : chosen;
        };
        if ((kind == Choice.Kind.OTHER || kind == Choice.Kind.DEFER) && reason.isBlank()) {
            throw new Refused(Refused.Why.REASON_MISSING);
        }
        if (kind == Choice.Kind.DEFER && (until == null || !until.isAfter(current.today()))) {
            throw new Refused(Refused.Why.DAY_MISSING);
        }
        SignedIn adult = current.get();
        Choice choice = new Choice(child.row().childId(), turn, kind, tier, until, reason.strip(),
                suggestion.suggested(), suggestion.verdict(), adult.name(), Instant.EPOCH);
        if (store.sealed(child.row().classId(), unit(child.row().classId()).unitId()).stream()
                .anyMatch(s -> s.reviewId().equals(review.reviewId()))) {
            throw new Refused(Refused.Why.CLOSED);
        }
        if (turn != review.turns(child.row().childId()) + 1
                || !store.choose(adult.districtId(), review.reviewId(), choice, adult.adultId())) {
            throw new Refused(Refused.Why.CHOSEN_MEANWHILE);
        }
    }

    /**
     * Closes the review: stores each decision and seals what was suggested, on what, and who chose what and why.
     *
     * @param tellers per child who tells whom; may be empty
     * @throws Refused when children are left or it is closed already
     */
    public SealedReview close(UUID classId, Map<UUID, String> tellers) {
        OpenReview review = open(classId).orElseThrow(() -> new Refused(Refused.Why.CLOSED));
        store.lock(review.reviewId());
        OpenReview now = open(classId).orElseThrow(() -> new Refused(Refused.Why.CLOSED));
        if (!now.left().isEmpty()) {
            throw new Refused(Refused.Why.CHILDREN_LEFT);
        }
        List<TierService.Decided> decided = new ArrayList<>();
        for (OneChild child : now.picture().children()) {
            Choice choice = now.choice(child.row().childId()).orElseThrow();
            if (choice.kind() != Choice.Kind.DEFER) {
                String why = choice.kind() == Choice.Kind.ACCEPT && choice.reason().isEmpty()
                        ? "Weekly review" : choice.reason();
                decided.add(new TierService.Decided(child.row().childId(), choice.tier(), why));
            }
        }
        String content = seals.write(now, tellers);
        SignedIn adult = current.get();
        if (!store.seal(adult.districtId(), now.reviewId(), current.today(), content, seals.digest(content),
                adult.adultId())) {
            throw new Refused(Refused.Why.CLOSED);
        }
        tiers.decideAll(classId, decided);
        return sealed(classId).getFirst();
    }

    /**
     * A closed review as it goes on paper.
     *
     * @param labels names of the children now in the class
     * @param compared beside the review before; {@code null} for the first
     * @param statements per child what its family put beside the record, of those who have any; 34 CFR 99.21 (c) has it
     *     go wherever the contested part goes, and which part that is stands in its words only, so it goes with all
     */
    public record Printed(SealedReview review, String className, Map<UUID, String> labels,
            @Nullable Comparison compared, Map<UUID, List<FamilyRequest.Step>> statements) {}

    /**
     * A closed review to be printed; written down in the record of each child in it.
     *
     * @throws NotVisible when there is none of that id or the adult has no part in its class
     */
    public Printed print(UUID reviewId) {
        for (Classroom room : mine()) {
            Optional<SealedReview> found = sealed(room.classId()).stream()
                    .filter(review -> review.reviewId().equals(reviewId)).findFirst();
            if (found.isPresent()) {
                Map<UUID, String> labels = new HashMap<>();
                roster.children(room.classId()).forEach(c -> labels.put(c.childId(), c.label()));
                List<UUID> children = found.get().children().stream().map(SealedReview.Line::childId).toList();
                record.printed(room.classId(), children);
                return new Printed(found.get(), room.name(), labels, compared(room.classId(), reviewId).orElse(null),
                        statements(children.stream().filter(labels::containsKey).toList()));
            }
        }
        throw new NotVisible();
    }

    private Map<UUID, List<FamilyRequest.Step>> statements(List<UUID> children) {
        Map<UUID, List<FamilyRequest.Step>> statements = new LinkedHashMap<>();
        children.forEach(child -> {
            List<FamilyRequest.Step> said = requests.statements(child);
            if (!said.isEmpty()) {
                statements.put(child, said);
            }
        });
        return statements;
    }

    /**
     * A closed review beside the one closed before it in the unit.
     *
     * @return empty when it is the first, or none of that id is in the class
     * @throws NotVisible when the adult has no part in the class
     */
    public Optional<Comparison> compared(UUID classId, UUID reviewId) {
        List<SealedReview> sealed = sealed(classId);
        for (int at = 0; at + 1 < sealed.size(); at++) {
            if (sealed.get(at).reviewId().equals(reviewId)) {
                return Optional.of(Comparison.of(sealed.get(at + 1), sealed.get(at), observations.ofClass(classId)));
            }
        }
        return Optional.empty();
    }

    /** Closed reviews of the class in the unit in hand, newest first. */
    public List<SealedReview> sealed(UUID classId) {
        access.requireClass(classId);
        return store.sealed(classId, unit(classId).unitId()).stream().map(row -> {
            Map<UUID, Integer> later = new HashMap<>();
            observations.find(null, null, null, row.on()).stream()
                    .filter(line -> line.recordedAt().isAfter(row.at()))
                    .forEach(line -> later.merge(line.childId(), 1, Integer::sum));
            return new SealedReview(row.reviewId(), row.week(), row.on(), row.by(), row.at(),
                    seals.digest(row.content()).equals(row.digest()), seals.read(row.content()), later);
        }).toList();
    }
}
