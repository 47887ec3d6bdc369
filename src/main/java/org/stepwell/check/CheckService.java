package org.stepwell.check;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.check.CheckItem;
import org.stepwell.core.check.Mark;
import org.stepwell.core.check.SkillResult;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.progression.Progression.Phrase;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** Makes unit checks, takes marks in, and lets them count as evidence. Only adults of the class see a check. */
@Service
@Transactional
public class CheckService {
    private final CheckStore store;
    private final CheckEvidence evidence;
    private final RosterService roster;
    private final ProgressionService progressions;
    private final Access access;
    private final CurrentAdult current;

    CheckService(CheckStore store, CheckEvidence evidence, RosterService roster, ProgressionService progressions,
            Access access, CurrentAdult current) {
        this.store = store;
        this.evidence = evidence;
        this.roster = roster;
        this.progressions = progressions;
        this.access = access;
        this.current = current;
    }

    /**
     * What became of a mark.
     *
     * @param stored whether it was; when not, somebody else changed the cell first
     * @param cell what stands there now; {@code null} when the cell is empty
     */
    public record Marked(boolean stored, @Nullable CheckCell cell) {}

    /**
     * A mark as an adult sets it.
     *
     * @param seen number of the cell that was on the screen; 0 when it was empty
     * @param error error tag of the item's skill, for a wrong or half answer; {@code null} for none
     */
    public record Tap(UUID childId, String item, int entry, int seen, Mark mark, @Nullable String error) {}

    /** Checks of the class, newest first. */
    public List<CheckLine> checks(UUID classId) {
        access.requireClass(classId);
        return store.ofClass(classId);
    }

    /** Highest step expected of each skill of the unit in hand, in the order of the progression; empty without one. */
    public Map<String, Integer> unitSkills(UUID classId) {
        access.requireClass(classId);
        Map<String, Integer> steps = store.unit(classId).map(u -> store.unitSteps(u.unitId())).orElse(Map.of());
        Map<String, Integer> ordered = new LinkedHashMap<>();
        progressions.ofClass(classId).skills().stream().filter(s -> steps.containsKey(s.code()))
                .forEach(s -> ordered.put(s.code(), steps.get(s.code())));
        steps.forEach(ordered::putIfAbsent);
        return ordered;
    }

    /**
     * Makes a check of the unit in hand.
     *
     * @throws IllegalArgumentException when the class has no unit, or the blueprint is wrong
     */
    public UUID create(UUID classId, String title, LocalDate heldOn, List<CheckItem> items) {
        access.requireClass(classId);
        CheckStore.Unit unit = store.unit(classId).orElseThrow(() -> new Refused("unit.none"));
        return create(unit.unitId(), title, heldOn, null, items);
    }

    private UUID create(UUID unitId, String title, LocalDate heldOn, @Nullable UUID retakeOf, List<CheckItem> items) {
        if (title.isBlank() || title.strip().length() > 200) {
            throw new Refused("check.name");
        }
        holdWhole(items);
        SignedIn adult = current.get();
        UUID id = store.add(adult.districtId(), unitId, title.strip(), heldOn, retakeOf, adult.adultId());
        store.addItems(adult.districtId(), id, 1, items, adult.adultId());
        return id;
    }

    private static void holdWhole(List<CheckItem> items) {
        if (items.isEmpty() || items.size() > 60) {
            throw new Refused("check.items", items.size());
        }
        Set<String> codes = new HashSet<>();
        items.forEach(item -> {
            if (!codes.add(item.code())) {
                throw new Refused("check.twice", item.code());
            }
        });
    }

    /** The revision of the blueprint that holds, to be sent back when saving. */
    public int revision(UUID checkId) {
        visible(checkId);
        return store.revision(checkId);
    }

    /**
     * Saves a blueprint; what counts as evidence follows.
     *
     * @param seenRevision the one that was on the screen
     * @throws IllegalArgumentException when it is wrong or somebody saved another meanwhile
     */
    public void saveItems(UUID checkId, int seenRevision, List<CheckItem> items) {
        visible(checkId);
        holdWhole(items);
        store.hold(checkId);
        if (store.revision(checkId) != seenRevision) {
            throw new Refused("check.meanwhile");
        }
        SignedIn adult = current.get();
        store.addItems(adult.districtId(), checkId, seenRevision + 1, items, adult.adultId());
        follow(checkId, null);
    }

    /** The check with everything on it. */
    public CheckSheet sheet(UUID checkId) {
        CheckStore.OfClass found = visible(checkId);
        List<ChildRow> children = roster.children(found.classId());
        UUID origin = found.line().retakeOf();
        return new CheckSheet(found.line(), store.items(checkId), children,
                store.cells(checkId, children.stream().map(ChildRow::childId).toList()), store.sittings(checkId),
                origin == null ? Map.of() : missed(sheet(origin)));
    }

    /** Skills to be asked again, by child; nothing is asked of a child who was not there. */
    static Map<UUID, Set<String>> missed(CheckSheet sheet) {
        Map<UUID, Set<String>> missed = new HashMap<>();
        for (ChildRow child : sheet.sat()) {
            missed.put(child.childId(), SkillResult.of(sheet.itemsFor(child.childId()),
                    sheet.marks(child.childId(), 1)).stream().filter(r -> r.says() == SkillResult.Says.AGAIN)
                    .map(SkillResult::skill).collect(Collectors.toCollection(LinkedHashSet::new)));
        }
        return missed;
    }

    /** Class the check belongs to. */
    public UUID classOf(UUID checkId) {
        return visible(checkId).classId();
    }

    private CheckStore.OfClass visible(UUID checkId) {
        CheckStore.OfClass found = store.find(checkId).orElseThrow(NotVisible::new);
        access.requireClass(found.classId());
        return found;
    }

    /**
     * Sets marks. A cell that somebody else changed since it was seen keeps what stands there, unless it is the same.
     *
     * @return in order, one for each
     * @throws NotVisible when a child is not of the class
     * @throws IllegalArgumentException when an item or an error tag is not known
     */
    public List<Marked> mark(UUID checkId, List<Tap> taps) {
        CheckStore.OfClass found = visible(checkId);
        Set<UUID> children = roster.children(found.classId()).stream().map(ChildRow::childId)
                .collect(Collectors.toSet());
        Map<String, CheckItem> items = store.items(checkId).stream()
                .collect(Collectors.toMap(CheckItem::code, item -> item));
        Progression progression = progressions.ofClass(found.classId());
        SignedIn adult = current.get();
        store.hold(checkId);
        List<Marked> answers = new ArrayList<>();
        Set<UUID> changed = new LinkedHashSet<>();
        for (Tap tap : taps) {
            if (!children.contains(tap.childId())) {
                throw new NotVisible();
            }
            CheckItem item = items.get(tap.item());
            if (item == null || tap.entry() < 1 || tap.entry() > 2) {
                throw new Refused("check.no-item", tap.item());
            }
            String error = tap.mark() == Mark.WRONG || tap.mark() == Mark.HALF ? tap.error() : null;
            if (error != null && errors(progression, item.skill()).noneMatch(e -> e.code().equals(error))) {
                throw new Refused("check.error", error, item.skill());
            }
            boolean stored = store.addMark(adult.districtId(), checkId, tap.childId(), tap.item(), tap.entry(),
                    tap.seen() + 1, tap.mark(), error, adult.adultId());
            Optional<CheckCell> now = store.cells(checkId, List.of(tap.childId())).stream()
                    .filter(c -> c.item().equals(tap.item()) && c.entry() == tap.entry()).findFirst();
            boolean same = now.isPresent() && now.get().mark() == tap.mark()
                    && java.util.Objects.equals(now.get().error(), error);
            answers.add(new Marked(stored || same, now.orElse(null)));
            if (stored && tap.entry() == 1) {
                changed.add(tap.childId());
            }
        }
        changed.forEach(child -> follow(checkId, child));
        return answers;
    }

    private static java.util.stream.Stream<Phrase> errors(Progression progression, String skill) {
        return progression.phrases().stream().filter(p -> p.kind() == Phrase.Kind.ERROR && p.skill().equals(skill));
    }

    /** Marks every empty cell of a child right; what has a mark keeps it. Gives the cells as they stand. */
    public List<CheckCell> restRight(UUID checkId, UUID childId, int entry) {
        CheckSheet sheet = sheet(checkId);
        Map<String, CheckCell> there = new HashMap<>();
        sheet.cells().stream().filter(c -> c.childId().equals(childId) && c.entry() == entry)
                .forEach(c -> there.put(c.item(), c));
        List<Tap> taps = new ArrayList<>();
        for (CheckItem item : sheet.itemsFor(childId)) {
            CheckCell cell = there.get(item.code());
            if (cell == null || cell.mark() == Mark.CLEARED) {
                taps.add(new Tap(childId, item.code(), entry, cell == null ? 0 : cell.number(), Mark.RIGHT, null));
            }
        }
        mark(checkId, taps);
        return store.cells(checkId, List.of(childId)).stream().filter(c -> c.entry() == entry).toList();
    }

    /**
     * Writes down how a child sat the check.
     *
     * @throws IllegalArgumentException when the words are too long
     */
    public void sit(UUID checkId, UUID childId, CheckSitting sitting) {
        visible(checkId);
        access.requireChild(childId);
        if (sitting.accommodation().length() > 500) {
            throw new Refused("check.accommodation");
        }
        store.hold(checkId);
        store.addSitting(current.get().districtId(), checkId, childId, sitting, current.get().adultId());
        follow(checkId, childId);
    }

    /** Lets the marks count as evidence from now on, later corrections too. */
    public void count(UUID checkId) {
        visible(checkId);
        store.hold(checkId);
        store.count(current.get().districtId(), checkId, current.get().adultId());
        follow(checkId, null);
    }

    private void follow(UUID checkId, @Nullable UUID childId) {
        CheckSheet sheet = sheet(checkId);
        if (sheet.line().counted()) {
            sheet.children().stream().filter(c -> childId == null || c.childId().equals(childId))
                    .forEach(child -> evidence.follow(sheet, child));
        }
    }

    /**
     * Makes a retake: the items of every skill that at least one child missed; each child is asked only what it missed.
     *
     * @throws IllegalArgumentException when nobody missed a skill
     */
    public UUID retake(UUID checkId, String title, LocalDate heldOn) {
        CheckSheet sheet = sheet(checkId);
        Set<String> skills = new HashSet<>();
        missed(sheet).values().forEach(skills::addAll);
        List<CheckItem> items = sheet.items().stream().filter(i -> skills.contains(i.skill())).toList();
        if (items.isEmpty()) {
            throw new Refused("check.nobody-missed");
        }
        return create(sheet.line().unitId(), title, heldOn, checkId, items);
    }

    /** What children may choose as accommodation again: the newest words for each child in an earlier check. */
    public Map<UUID, String> earlierAccommodations(UUID checkId) {
        CheckStore.OfClass found = visible(checkId);
        Map<UUID, String> words = new HashMap<>();
        for (CheckLine line : store.ofClass(found.classId())) {
            if (!line.checkId().equals(checkId)) {
                store.sittings(line.checkId()).forEach((child, sitting) -> {
                    if (!sitting.accommodation().isEmpty()) {
                        words.putIfAbsent(child, sitting.accommodation());
                    }
                });
            }
        }
        return words;
    }
}
