package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.ChildPicture;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.evidence.Reading;

/** One child as seen on one day: the looks that count then, and what follows from them. Nothing is computed unasked. */
final class Sight {
    private final String child;
    private final DayContext context;
    private final List<CountedLook> looks;
    private final List<CountedLook> valid;
    private final List<CountedLook> inWindow;
    private @Nullable Reading reading;
    private @Nullable ChildPicture picture;
    private @Nullable TierChances chances;
    private @Nullable TierChances chancesWhenSeen;
    private @Nullable SortedMap<String, List<DayStep>> days;
    private @Nullable List<CountedLook> anySkillInWindow;
    private @Nullable List<CountedLook> inUnit;
    private @Nullable Map<String, List<DayStep>> watchedDays;
    private final Map<Measure, Optional<Double>> measured = new EnumMap<>(Measure.class);

    Sight(String child, DayContext context, List<CountedLook> looks) {
        this.child = child;
        this.context = context;
        this.looks = looks;
        this.valid = looks.stream()
                .filter(l -> l.valid() && context.due().containsKey(l.skill()))
                .toList();
        this.inWindow = valid.stream()
                .filter(l -> !l.day().isBefore(context.windowFrom()))
                .toList();
    }

    String child() {
        return child;
    }

    DayContext context() {
        return context;
    }

    LocalDate day() {
        return context.day();
    }

    /** All looks that count, of any skill, oldest first. */
    List<CountedLook> looks() {
        return looks;
    }

    /** Valid looks on due skills, oldest first. */
    List<CountedLook> valid() {
        return valid;
    }

    /** Those of them within the window of the rule file. */
    List<CountedLook> inWindow() {
        return inWindow;
    }

    /** Valid looks within the window, of any skill. */
    List<CountedLook> anySkillInWindow() {
        if (anySkillInWindow == null) {
            anySkillInWindow = looks.stream()
                    .filter(l -> l.valid() && !l.day().isBefore(context.windowFrom()))
                    .toList();
        }
        return anySkillInWindow;
    }

    /** All looks within the window, of any skill, also those after a hint or a model: that the child was seen at all. */
    List<CountedLook> seenInWindow() {
        return looks.stream().filter(l -> !l.day().isBefore(context.windowFrom())).toList();
    }

    /** Valid looks of the unit, of any skill. */
    List<CountedLook> inUnit() {
        if (inUnit == null) {
            inUnit = looks.stream()
                    .filter(l -> l.valid() && !l.day().isBefore(context.unitFrom()))
                    .toList();
        }
        return inUnit;
    }

    /** Evidence days of the unit at a skill, without items of a unit check, oldest first. */
    List<DayStep> watchedDays(String skill) {
        if (watchedDays == null) {
            Map<String, List<CountedLook>> bySkill = new TreeMap<>();
            for (CountedLook look : inUnit()) {
                if (!look.checkItem()) {
                    bySkill.computeIfAbsent(look.skill(), s -> new ArrayList<>()).add(look);
                }
            }
            Map<String, List<DayStep>> all = new TreeMap<>();
            bySkill.forEach((s, own) -> all.put(s, DayStep.of(own)));
            watchedDays = all;
        }
        return watchedDays.getOrDefault(skill, List.of());
    }

    /** All looks of the unit, of any skill, also those after a hint or a model: what the child was asked. */
    List<CountedLook> askedInUnit() {
        return looks.stream()
                .filter(l -> !l.day().isBefore(context.unitFrom()))
                .toList();
    }

    @Nullable LocalDate lastSeen() {
        return valid.stream().map(CountedLook::day).max(Comparator.naturalOrder()).orElse(null);
    }

    /** Day of the newest valid look at any skill. */
    @Nullable LocalDate lastSeenAtAnySkill() {
        return looks.stream()
                .filter(CountedLook::valid)
                .map(CountedLook::day)
                .max(Comparator.naturalOrder())
                .orElse(null);
    }

    /** What was measured of this sight before, or else is measured now. */
    @Nullable Double measured(Measure measure, Supplier<@Nullable Double> taken) {
        Optional<Double> known = measured.get(measure);
        if (known == null) {
            known = Optional.ofNullable(taken.get());
            measured.put(measure, known);
        }
        return known.orElse(null);
    }

    static int days(Collection<CountedLook> looks) {
        return (int) looks.stream().map(CountedLook::day).distinct().count();
    }

    Reading reading() {
        if (reading == null) {
            reading = context.filter().read(child, looks, context.pacing(), context.calendar(), day());
        }
        return reading;
    }

    ChildPicture picture() {
        if (picture == null) {
            picture = reading().picture();
        }
        return picture;
    }

    TierChances chances() {
        if (chances == null) {
            chances = TierChances.of(picture(), context.due());
        }
        return chances;
    }

    /** The chances at the end of the day of the last look at any skill, held against what is expected today. */
    TierChances chancesWhenSeen() {
        if (chancesWhenSeen == null) {
            LocalDate last = looks.isEmpty() ? null : looks.getLast().day();
            chancesWhenSeen = last == null || last.equals(day())
                    ? chances()
                    : TierChances.of(
                            context.filter().picture(child, looks, context.pacing(), context.calendar(), last),
                            context.due());
        }
        return chancesWhenSeen;
    }

    /** Evidence days within the window per due skill, oldest first. */
    SortedMap<String, List<DayStep>> daySteps() {
        if (days == null) {
            Map<String, List<CountedLook>> bySkill = new TreeMap<>();
            context.due().keySet().forEach(s -> bySkill.put(s, new ArrayList<>()));
            inWindow.forEach(l -> bySkill.get(l.skill()).add(l));
            SortedMap<String, List<DayStep>> all = new TreeMap<>();
            bySkill.forEach((skill, own) -> all.put(skill, DayStep.of(own)));
            days = all;
        }
        return days;
    }

    /** The signal of a due skill against a step. */
    DaySignal signal(String skill, int step) {
        List<DayStep.Reading> readings =
                daySteps().get(skill).stream().map(d -> d.against(step)).toList();
        return DaySignal.of(readings, context.settings().signal());
    }

    /** The same child without one look. */
    Sight without(UUID look) {
        return new Sight(
                child,
                context,
                looks.stream().filter(l -> !l.look().id().equals(look)).toList());
    }

    /** The same child on a later day, with further looks up to then. */
    Sight later(Collection<CountedLook> more, LocalDate laterDay) {
        List<CountedLook> all = new ArrayList<>(looks);
        all.addAll(more);
        return new Sight(child, context.on(laterDay), all);
    }
}
