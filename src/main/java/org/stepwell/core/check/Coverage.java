package org.stepwell.core.check;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.CountedLook;

/**
 * How often one child was looked at between two days.
 *
 * @param child the school's own id
 * @param looks looks at the table and elsewhere that count, assisted ones too; items of a check are answers, not looks
 * @param days different days
 * @param bySkill looks per skill
 * @param byAdult looks per observer
 * @param last day of the newest look there ever was; {@code null} when never seen
 */
public record Coverage(
        String child,
        int looks,
        int days,
        SortedMap<String, Integer> bySkill,
        SortedMap<String, Integer> byAdult,
        @Nullable LocalDate last) {

    /**
     * Counts one child.
     *
     * @param all the looks of the child that count, of any day
     * @param from first day
     * @param to last day
     */
    public static Coverage of(String child, Collection<CountedLook> all, LocalDate from, LocalDate to) {
        SortedMap<String, Integer> bySkill = new TreeMap<>();
        SortedMap<String, Integer> byAdult = new TreeMap<>();
        List<LocalDate> days = new ArrayList<>();
        LocalDate last = null;
        for (CountedLook look : all) {
            if (look.checkItem() || look.day().isAfter(to)) {
                continue;
            }
            last = last == null || look.day().isAfter(last) ? look.day() : last;
            if (!look.day().isBefore(from)) {
                days.add(look.day());
                bySkill.merge(look.skill(), 1, Integer::sum);
                byAdult.merge(look.look().observer(), 1, Integer::sum);
            }
        }
        return new Coverage(child, days.size(), (int) days.stream().distinct().count(), bySkill, byAdult, last);
    }
}
