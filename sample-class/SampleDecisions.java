import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What the adults decided before the anchor day, and what was given and asked. */
final class SampleDecisions {
    /** Fridays on which the class was reviewed and signed. */
    private static final List<LocalDate> REVIEWS =
            List.of(LocalDate.of(2026, 3, 27), LocalDate.of(2026, 4, 17), LocalDate.of(2026, 5, 1));

    private record Move(LocalDate from, String child, String tier, String reason) {}

    private static final List<Move> MOVES = List.of(
            new Move(REVIEWS.get(0), "q0616", "support", "Counts every stick again; a small group from Monday on."),
            new Move(REVIEWS.get(0), "q0621", "support", "Needs the ten once more with sticks, in a small group."),
            new Move(REVIEWS.get(1), "q0602", "support", "Counts all from one; four short sessions a week."),
            new Move(REVIEWS.get(1), "q0613", "support", "Counts all from one; four short sessions a week."),
            new Move(REVIEWS.get(2), "q0609", "extension", "Explains teens and decades; deeper tasks now."));

    /** {@code child,planned,given,missed_by_school,missed_by_child}. */
    static final List<String> DOSE = List.of("q0602,10,4,5,1", "q0613,12,11,0,1", "q0616,16,9,0,7", "q0621,16,15,1,0");

    /** {@code child,kind,on}. */
    static final List<String> CONCERNS = List.of("q0613,evaluation_request,2026-05-05");

    /** {@code sign_in,name,role}. */
    static final List<String> ADULTS = List.of(
            "teacher@sample,Imogen Castellane,teacher",
            "coteacher@sample,Rafael Osterlund,co_teacher",
            "specialist@sample,Nkechi Dunmore,specialist",
            "lead@sample,Anselm Varga,lead");

    /** {@code adult,child,reason,until_days}. */
    static final List<String> GRANTS = List.of(
            "specialist@sample,q0602,extra help in tens and ones,60",
            "specialist@sample,q0613,extra help in tens and ones,60",
            "specialist@sample,q0616,extra help in tens and ones,60",
            "specialist@sample,q0621,extra help in tens and ones,60");

    private SampleDecisions() {}

    /** {@code as_of,child,tier,reason}: one row per review and child. */
    static List<String> rows() {
        List<String> rows = new ArrayList<>();
        for (LocalDate day : REVIEWS) {
            for (SampleChild child : SampleChild.CLASS) {
                if (!day.isBefore(child.start())) {
                    rows.add(row(day, child.id()));
                }
            }
        }
        return rows;
    }

    private static String row(LocalDate day, String child) {
        Move held = MOVES.stream()
                .filter(m -> m.child().equals(child) && !m.from().isAfter(day))
                .findFirst()
                .orElse(null);
        if (held == null) {
            return day + "," + child + ",on_level,Goes on with the class.";
        }
        String reason = held.from().equals(day) ? held.reason() : KEPT.get(held.tier());
        return day + "," + child + "," + held.tier() + "," + SampleLook.quoted(reason);
    }

    private static final Map<String, String> KEPT =
            Map.of("support", "The small group goes on.", "extension", "The deeper tasks go on.");
}
