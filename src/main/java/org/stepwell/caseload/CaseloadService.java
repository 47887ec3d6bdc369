package org.stepwell.caseload;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.SkillEstimate;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.ChildState.Dose;
import org.stepwell.pacing.PacingService;
import org.stepwell.pacing.UnitInHand;
import org.stepwell.plan.Plan;
import org.stepwell.plan.PlanService;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;
import org.stepwell.tier.TierService;

/** The children shared with the signed-in adult across classes, and the threads about children. */
@Service
@Transactional
public class CaseloadService {
    private static final int LOOKS_ON_A_CARD = 3;
    /** Longest comment, letters. */
    public static final int LONGEST_COMMENT = 2000;

    private final CaseloadStore store;
    private final RosterService roster;
    private final TierService tiers;
    private final PlanService plans;
    private final PacingService pacing;
    private final Access access;
    private final CurrentAdult current;

    CaseloadService(CaseloadStore store, RosterService roster, TierService tiers, PlanService plans,
            PacingService pacing, Access access, CurrentAdult current) {
        this.store = store;
        this.roster = roster;
        this.tiers = tiers;
        this.plans = plans;
        this.pacing = pacing;
        this.access = access;
        this.current = current;
    }

    /**
     * A shared child.
     *
     * @param sharing what is shared, why, until when
     * @param child the child
     * @param room class of the child
     * @param focus what the child works on next; {@code null} when nothing is due
     * @param estimate where it stands on that; {@code null} when not seen
     * @param expected step expected on it
     * @param phrases words used for it at the table, by step
     * @param looks the newest, newest first
     * @param plan the plan that runs; {@code null} when none runs or it is not shared
     * @param dose sessions given against planned; {@code null} without a plan of help
     */
    public record Card(Sharing sharing, ChildRow child, Classroom room, Progression.@Nullable Skill focus,
            @Nullable SkillEstimate estimate, int expected, List<Progression.Phrase> phrases, List<Look> looks,
            @Nullable Plan plan, @Nullable Dose dose) {}

    /** Everybody shared with this adult, by class and name; nobody whom this adult sees as one of a class. */
    public List<Card> mine(String language) {
        SignedIn adult = current.get();
        LocalDate today = current.today();
        List<ChildRow> children = roster.children();
        Map<UUID, Sharing> shared = store.with(adult.adultId(), children.stream().map(ChildRow::childId).toList(), today)
                .stream().collect(Collectors.toMap(Sharing::childId, Function.identity(),
                        (a, b) -> a.until().isAfter(b.until()) ? a : b));
        List<Card> cards = new ArrayList<>();
        for (Classroom room : roster.classes()) {
            if (access.classes().contains(room.classId()) || children.stream().noneMatch(c ->
                    c.classId().equals(room.classId()) && shared.containsKey(c.childId()))) {
                continue;
            }
            ClassPicture picture = tiers.picture(room.classId());
            for (OneChild one : picture.children()) {
                Sharing sharing = shared.get(one.row().childId());
                if (sharing != null) {
                    cards.add(card(sharing, one, room, picture, language));
                }
            }
        }
        return cards;
    }

    private Card card(Sharing sharing, OneChild one, Classroom room, ClassPicture picture, String language) {
        Progression.Skill focus = picture.focus(one).orElse(null);
        List<Look> looks = picture.looks().stream().filter(l -> l.child().equals(one.row().schoolKey())
                && l.step() != null && !l.withdrawn()).sorted(Comparator.comparing(Look::observedAt).reversed())
                .limit(LOOKS_ON_A_CARD).toList();
        Plan plan = !sharing.plan() ? null : plans.running(one.row().childId()).orElse(null);
        SchoolCalendar calendar = pacing.unit(room.classId()).map(UnitInHand::calendar)
                .orElseGet(() -> new SchoolCalendar(List.of()));
        return new Card(sharing, one.row(), room, focus, focus == null ? null : one.picture().skills().get(focus.code()),
                focus == null ? 0 : Optional.ofNullable(picture.due().get(focus.code())).orElse(0),
                focus == null ? List.of() : picture.progression().phrases().stream().filter(p ->
                        p.skill().equals(focus.code()) && p.kind() == Progression.Phrase.Kind.PHRASE
                                && p.language().equals(language)).toList(),
                looks, plan, plan == null ? null : plan.dose(calendar, picture.day()));
    }

    /**
     * The thread about a child, oldest first.
     *
     * @throws org.stepwell.privacy.NotVisible when the child may not be seen
     */
    public List<Comment> comments(UUID childId) {
        access.requireChild(childId);
        return store.comments(childId, current.get().zone());
    }

    /**
     * Adds to the thread about a child.
     *
     * @param commentId made by the page; the same id again does nothing
     * @throws Refused when there are no words, or more than {@value #LONGEST_COMMENT} letters
     * @throws org.stepwell.privacy.NotVisible when the child may not be seen
     */
    public void comment(UUID childId, UUID commentId, String words) {
        access.requireChild(childId);
        if (words.isBlank() || words.strip().length() > LONGEST_COMMENT) {
            throw new Refused("comment.length", LONGEST_COMMENT);
        }
        SignedIn adult = current.get();
        store.comment(adult.districtId(), commentId, childId, words.strip(), adult.adultId());
    }
}
