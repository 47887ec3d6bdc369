package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.core.evidence.EvidenceFilter;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.LookBook;

/**
 * The looks of a class and what was known on each day that is asked about. The last few days are kept. Several threads may
 * ask at once as long as no two ask about one child.
 */
final class ClassHistory {
    private static final int DAYS_KEPT = 4;

    /** What was known at the end of one day. */
    static final class View {
        private final DayContext context;
        private final EffectiveLooks looks;
        private final Map<String, Sight> sights = new ConcurrentHashMap<>();

        private View(DayContext context, EffectiveLooks looks) {
            this.context = context;
            this.looks = looks;
        }

        DayContext context() {
            return context;
        }

        EffectiveLooks looks() {
            return looks;
        }

        Sight sight(String child) {
            return sights.computeIfAbsent(child, c -> new Sight(c, context, looks.of(c)));
        }
    }

    private final ClassSetting setting;
    private final List<Look> looks;
    private final SortedSet<LocalDate> seenDays = new TreeSet<>();
    private final LookBook book;
    private final EvidenceFilter filter;
    private final RuleSettings settings;
    private final Map<LocalDate, View> views = new LinkedHashMap<>();

    ClassHistory(ClassSetting setting, Collection<Look> looks, EvidenceFilter filter, RuleSettings settings) {
        this.setting = setting;
        this.looks = List.copyOf(looks);
        this.book = new LookBook(this.looks, setting.progression());
        this.filter = filter;
        this.settings = settings;
        for (Look look : looks) {
            if (look.step() != null && !look.withdrawn()) {
                seenDays.add(look.day());
            }
        }
    }

    synchronized View on(LocalDate day) {
        View known = views.get(day);
        if (known == null) {
            DayContext context = DayContext.of(
                    day, setting.calendarOn(day, seenDays), setting.pacing(), filter, settings);
            known = new View(context, book.upTo(day));
            views.put(day, known);
            if (views.size() > DAYS_KEPT) {
                views.remove(views.keySet().iterator().next());
            }
        }
        return known;
    }

    /** The child as seen on its n-th last review before the day, counted from 0; {@code null} when there was none. */
    @Nullable Sight earlier(ChildState state, LocalDate day, int back) {
        List<LocalDate> before =
                state.reviews().stream().filter(r -> r.isBefore(day)).toList();
        int at = before.size() - 1 - back;
        return at < 0 ? null : on(before.get(at)).sight(state.child());
    }

    ClassSetting setting() {
        return setting;
    }

    Collection<Look> looks() {
        return looks;
    }
}
