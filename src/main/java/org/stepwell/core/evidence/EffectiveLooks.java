package org.stepwell.core.evidence;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.progression.Progression;

/**
 * The looks of a class that count on a day, after corrections.
 *
 * <p>What is dated up to the end of the day is known, nothing later; the order in which looks arrive never matters.
 *
 * <ul>
 *   <li>A look named by another's {@code replaces} is out, whether the other came before or after it, and also when
 *       the other is itself replaced or withdrawn later: nothing comes back.
 *   <li>A correction may move a look to another child, so the looks of the whole class are resolved together.
 *   <li>When several corrections compete for one look (two adults without network), the latest counts: by
 *       {@code observedAt}, then by id.
 *   <li>Without a step a look is a note. Tagged {@code not_valid} or {@code copied} it is no evidence.
 *   <li>With {@code cubes} a step of 3 or more says "at least", unless objects belong to the task at that step.
 * </ul>
 */
public final class EffectiveLooks {
    /** Oldest first; looks of one instant by id. */
    public static final Comparator<CountedLook> BY_TIME = (a, b) -> compare(a.look(), b.look());

    private static final int FIRST_STEP_HIDDEN_BY_OBJECTS = 3;

    private final LocalDate day;
    private final Map<String, List<CountedLook>> byChild;
    private final Set<String> known;

    EffectiveLooks(LocalDate day, Map<String, List<CountedLook>> byChild, Set<String> known) {
        this.day = day;
        this.byChild = byChild;
        this.known = known;
    }

    /**
     * Resolves the looks of a class.
     *
     * @param raw every look there is, in any order, also replaced, withdrawn and later ones; one id counts once
     * @param progression says where objects belong to the task
     * @param day the last day that is known
     */
    public static EffectiveLooks of(Collection<Look> raw, Progression progression, LocalDate day) {
        return new LookBook(raw, progression).upTo(day);
    }

    /** The last day that is known. */
    public LocalDate day() {
        return day;
    }

    /** Every child with any row dated up to the day, also one whose looks all fell away. */
    public SortedSet<String> children() {
        return Collections.unmodifiableSortedSet(new TreeSet<>(known));
    }

    /** The looks of the child that count, oldest first; empty when there are none. */
    public List<CountedLook> of(String child) {
        return Collections.unmodifiableList(byChild.getOrDefault(child, List.of()));
    }

    /** The looks of the child at one skill that count, oldest first. */
    public List<CountedLook> of(String child, String skill) {
        return of(child).stream().filter(l -> l.skill().equals(skill)).toList();
    }

    /** The evidence days of the child at one skill, oldest first. */
    public List<DayStep> days(String child, String skill) {
        return DayStep.of(of(child, skill));
    }

    /**
     * The step that an item of a unit check speaks for: right, the step it tests; wrong, the step below. Below step 1
     * there is nothing: a wrong item of step 1 is step 1 tagged {@code not_yet}.
     *
     * @param tested 1-5
     */
    public static int stepOfItem(int tested, boolean right) {
        if (tested < 1 || tested > 5) {
            throw new IllegalArgumentException("an item tests a step of 1-5, not " + tested);
        }
        return right ? tested : Math.max(1, tested - 1);
    }

    /** Reads one look by itself, as it would count if nothing replaced it; {@code null} when it is no evidence. */
    public static @Nullable CountedLook counted(Look look, Progression progression) {
        return counted(look, whereObjectsBelong(progression));
    }

    static @Nullable CountedLook counted(Look look, Set<String> objectsBelong) {
        boolean noEvidence =
                !look.tags().isEmpty() && Tags.NO_EVIDENCE.stream().anyMatch(look.tags()::contains);
        Integer shown = look.step();
        String skill = look.skill();
        if (shown == null || skill == null || look.withdrawn() || noEvidence) {
            return null;
        }
        int step = look.tags().contains(Tags.NOT_YET) ? 1 : shown;
        boolean atLeast = look.help() == Help.CUBES
                && step >= FIRST_STEP_HIDDEN_BY_OBJECTS
                && !objectsBelong.contains(skill + "." + step);
        return new CountedLook(look, skill, step, atLeast);
    }

    /** By instant, then by the text of the id; written out because it is asked millions of times in a replay. */
    private static int compare(Look a, Look b) {
        OffsetDateTime first = a.observedAt();
        OffsetDateTime second = b.observedAt();
        int byInstant = first.getOffset().equals(second.getOffset())
                ? first.toLocalDateTime().compareTo(second.toLocalDateTime())
                : first.toInstant().compareTo(second.toInstant());
        if (byInstant != 0) {
            return byInstant;
        }
        int high = Long.compareUnsigned(a.id().getMostSignificantBits(), b.id().getMostSignificantBits());
        return high != 0
                ? high
                : Long.compareUnsigned(a.id().getLeastSignificantBits(), b.id().getLeastSignificantBits());
    }

    static Set<String> whereObjectsBelong(Progression progression) {
        Set<String> places = new HashSet<>();
        for (Progression.Phrase phrase : progression.phrases()) {
            if (phrase.kind() == Progression.Phrase.Kind.HELP && phrase.code().equals(Progression.OBJECTS_BELONG)) {
                places.add(phrase.skill() + "." + phrase.step());
            }
        }
        return places;
    }

    /** Looks that nothing replaces, and of those that go back to one look only the latest. */
    static Collection<Look> standing(Map<UUID, Look> dated) {
        Set<UUID> replaced = new HashSet<>();
        for (Look look : dated.values()) {
            if (look.replaces() != null) {
                replaced.add(look.replaces());
            }
        }
        if (replaced.isEmpty()) {
            return dated.values();
        }
        Map<UUID, Look> lastOfRoot = new HashMap<>();
        for (Look look : dated.values()) {
            if (!replaced.contains(look.id())) {
                lastOfRoot.merge(root(look, dated), look, (a, b) -> compare(a, b) < 0 ? b : a);
            }
        }
        return lastOfRoot.values();
    }

    private static UUID root(Look look, Map<UUID, Look> dated) {
        UUID at = look.id();
        UUID next = look.replaces();
        Set<UUID> passed = new HashSet<>();
        while (next != null && passed.add(next)) {
            at = next;
            Look target = dated.get(at);
            next = target == null ? null : target.replaces();
        }
        return at;
    }
}
