package org.stepwell.bench;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.progression.Progression;

/** What the program knows of a classroom on each of its review days. */
final class RoomEvidence {
    private static final Progression NONE = new Progression("bench", List.of(), List.of());

    private final Classroom room;
    private final List<EffectiveLooks> looks = new ArrayList<>();
    private final List<SchoolCalendar> calendars = new ArrayList<>();

    RoomEvidence(Classroom room) {
        this.room = room;
        SortedSet<LocalDate> seen = new TreeSet<>();
        room.looks().forEach(look -> seen.add(look.day()));
        for (LocalDate day : room.reviews()) {
            looks.add(EffectiveLooks.of(room.looks(), NONE, day));
            calendars.add(
                    room.calendar().breaks().isEmpty() ? room.calendar().withInferredBreaks(seen, day) : room.calendar());
        }
    }

    /** The looks of a child that count on the review. */
    List<CountedLook> looks(String child, int review) {
        return looks.get(review).of(child);
    }

    /** All that counts on the review. */
    EffectiveLooks all(int review) {
        return looks.get(review);
    }

    /** The calendar as known on the review. */
    SchoolCalendar calendar(int review) {
        return calendars.get(review);
    }

    /** What a rule of thumb looks at: the marks at due skills as they stand in the book, oldest first. */
    Decider.Sight sight(String child, int review) {
        LocalDate day = room.reviews().get(review);
        var due = room.pacing().dueOn(day);
        List<CountedLook> own = looks(child, review).stream()
                .filter(l -> due.containsKey(l.skill()))
                .toList();
        return new Decider.Sight(day, due, own);
    }
}
