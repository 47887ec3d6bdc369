package org.stepwell.core.evidence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.progression.Progression;

/**
 * The looks of a class put in order once, to be asked for many days: {@link #upTo} gives what
 * {@link EffectiveLooks#of} gives. Only looks that a correction touches are resolved anew for each day.
 */
public final class LookBook {
    private final Set<String> objectsBelong;
    /** Looks that no correction names and that name none, oldest first. */
    private final Map<String, List<CountedLook>> plain = new HashMap<>();

    private final List<Look> corrected = new ArrayList<>();
    /** The first day on which there is any row of a child. */
    private final Map<String, LocalDate> knownFrom = new HashMap<>();

    /**
     * @param raw every look there is, in any order, also replaced, withdrawn and later ones; one id counts once
     * @param progression says where objects belong to the task
     */
    public LookBook(Collection<Look> raw, Progression progression) {
        this.objectsBelong = EffectiveLooks.whereObjectsBelong(progression);
        Set<UUID> named = new HashSet<>();
        for (Look look : raw) {
            if (look.replaces() != null) {
                named.add(look.replaces());
            }
        }
        Set<UUID> met = HashSet.newHashSet(raw.size());
        for (Look look : raw) {
            if (!met.add(look.id())) {
                continue;
            }
            knownFrom.merge(look.child(), look.day(), (a, b) -> a.isBefore(b) ? a : b);
            if (look.replaces() != null || named.contains(look.id())) {
                corrected.add(look);
            } else {
                put(plain, EffectiveLooks.counted(look, objectsBelong));
            }
        }
        plain.values().forEach(list -> list.sort(EffectiveLooks.BY_TIME));
    }

    private static void put(Map<String, List<CountedLook>> byChild, @Nullable CountedLook look) {
        if (look != null) {
            byChild.computeIfAbsent(look.look().child(), c -> new ArrayList<>()).add(look);
        }
    }

    /** What counts on a day: everything dated up to its end is known, nothing later. */
    public EffectiveLooks upTo(LocalDate day) {
        Map<String, List<CountedLook>> byChild = new HashMap<>();
        plain.forEach((child, looks) -> {
            List<CountedLook> own = new ArrayList<>(looks.size());
            for (CountedLook look : looks) {
                if (!look.day().isAfter(day)) {
                    own.add(look);
                }
            }
            if (!own.isEmpty()) {
                byChild.put(child, own);
            }
        });
        Map<UUID, Look> dated = new HashMap<>();
        for (Look look : corrected) {
            if (!look.day().isAfter(day)) {
                dated.put(look.id(), look);
            }
        }
        Set<String> touched = new HashSet<>();
        for (Look look : EffectiveLooks.standing(dated)) {
            put(byChild, EffectiveLooks.counted(look, objectsBelong));
            touched.add(look.child());
        }
        touched.forEach(child -> byChild.getOrDefault(child, new ArrayList<>()).sort(EffectiveLooks.BY_TIME));
        Set<String> known = new HashSet<>();
        knownFrom.forEach((child, from) -> {
            if (!from.isAfter(day)) {
                known.add(child);
            }
        });
        return new EffectiveLooks(day, byChild, known);
    }
}
