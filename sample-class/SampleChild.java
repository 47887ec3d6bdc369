import java.time.LocalDate;
import java.util.List;

/**
 * One invented child of the class.
 *
 * @param id the school's own id
 * @param group 1-5, the table group
 * @param start first day in the class
 * @param pace chance per school day to go up one step while a skill is taught; 0 = scripted, not simulated
 * @param firstStep the step brought along to a new skill, 1-3
 */
record SampleChild(
        String id, String given, String family, int group, LocalDate start, double pace, int firstStep) {

    private static final LocalDate YEAR = LocalDate.of(2025, 8, 18);

    /** The whole class, in order of id. Names come from many places and belong to nobody. */
    static final List<SampleChild> CLASS = List.of(
            new SampleChild("q0601", "Aiyana", "Tsosie-Marr", 1, YEAR, 0.11, 2),
            new SampleChild("q0602", "Amadou", "Diarra", 3, YEAR, 0, 1),
            new SampleChild("q0603", "Devika", "Raghunath", 1, YEAR, 0, 3),
            new SampleChild("q0604", "Emeka", "Obiora", 4, YEAR, 0.10, 2),
            new SampleChild("q0605", "Freya", "Halvorsen", 2, YEAR, 0.13, 2),
            new SampleChild("q0606", "Hassan", "Mirzaei", 5, YEAR, 0.08, 2),
            new SampleChild("q0607", "Itzel", "Canche Moo", 4, YEAR, 0, 2),
            new SampleChild("q0608", "Jonah", "Whitlock", 5, YEAR, 0.11, 2),
            new SampleChild("q0609", "Kenji", "Aramaki", 1, YEAR, 0.16, 3),
            new SampleChild("q0610", "Kwabena", "Asamoah", 2, YEAR, 0, 1),
            new SampleChild("q0611", "Leilani", "Kealoha", 2, YEAR, 0.12, 2),
            new SampleChild("q0612", "Linh", "Trần", 4, YEAR, 0, 2),
            new SampleChild("q0613", "Marisol", "Quintanar", 3, YEAR, 0, 1),
            new SampleChild("q0614", "Mei", "Zhou-Larkin", 1, YEAR, 0.14, 3),
            new SampleChild("q0615", "Noor", "Al-Khatib", 4, YEAR, 0, 2),
            new SampleChild("q0616", "Oleksandr", "Hrytsenko", 3, YEAR, 0, 1),
            new SampleChild("q0617", "Ruby", "Tarrant", 5, YEAR, 0, 1),
            new SampleChild("q0618", "Sofia", "Marchetti", 2, YEAR, 0.12, 2),
            new SampleChild("q0619", "Sofia", "Reyes", 5, YEAR, 0.09, 2),
            new SampleChild("q0620", "Tane", "Parata", 5, YEAR, 0, 2),
            new SampleChild("q0621", "Tomasz", "Wrona", 3, YEAR, 0, 1),
            new SampleChild("q0622", "Yusuf", "Warsame", 1, LocalDate.of(2026, 5, 4), 0, 2),
            new SampleChild("q0623", "Zainab", "Gueye", 2, YEAR, 0.11, 2));

    /** The child with this id. */
    static SampleChild of(String id) {
        return CLASS.stream().filter(c -> c.id().equals(id)).findFirst().orElseThrow();
    }

    /** Nothing of this child is simulated in the unit under way: every look is written by hand. */
    boolean scripted() {
        return pace == 0;
    }
}
