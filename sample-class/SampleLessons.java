import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;

/** Ordinary days of the class: hidden steps that grow with the lessons, and what the adults happen to see of them. */
final class SampleLessons {
    /** How much harder each next step is, from step 1, 2, 3 and 4. */
    private static final double[] SHAPE = {1.5, 1.4, 0.9, 0.12};

    /** Days with a short task for the whole class at the end, and its skill. */
    private static final Map<LocalDate, String> EXIT_TASKS = Map.of(
            LocalDate.of(2026, 3, 20), "T04",
            LocalDate.of(2026, 3, 27), "T02",
            LocalDate.of(2026, 4, 10), "T05",
            LocalDate.of(2026, 4, 17), "T08",
            LocalDate.of(2026, 4, 29), "T08",
            LocalDate.of(2026, 5, 6), "T08");

    /** Children of this list lost the hold on T08 in the lost week; they have it back a week later. */
    private static final Set<String> DIPPED = Set.of("q0604", "q0606", "q0608", "q0611", "q0618", "q0619", "q0623");

    private static final Map<String, List<String>> TASKS = Map.of(
            "T01", List.of("47", "38", "68", "100"),
            "T02", List.of("12", "17", "20", "14"),
            "T03", List.of("7", "8", "6", "4"),
            "T04", List.of("10", "20"),
            "T05", List.of("14", "16", "17", "19", "13", "15", "11", "12"),
            "T06", List.of("13", "30", "15", "50", "16"),
            "T07", List.of("20", "30", "50", "60"),
            "T08", List.of("34", "47", "52", "68", "40"));

    private static final Map<String, String> SLIPS = Map.of(
            "T04", "recounted_the_stick",
            "T05", "recounted_the_stick",
            "T06", "digits_swapped",
            "T08", "lost_the_shift");

    private static final List<String> NOTES = List.of(
            "Took a while to start, then went well.",
            "Asked to do one more.",
            "Counted under the table with fingers.",
            "Helped to put the cubes away in tens.",
            "Was tired today.",
            "Found the mistake alone.",
            "Wanted bigger numbers.",
            "Loved the cloth game.");

    private final SplittableRandom random;
    private final Map<String, List<String>> phrases;
    private final Map<String, Map<String, Integer>> hidden = new HashMap<>();
    private final List<SampleLook> looks = new ArrayList<>();

    /** @param phrases codes by skill and step, such as {@code T05.3} */
    SampleLessons(SplittableRandom random, Map<String, List<String>> phrases) {
        this.random = random;
        this.phrases = phrases;
    }

    /** All days of the class, and one look by the school lead on a visit. */
    List<SampleLook> looks() {
        for (LocalDate day : SampleDays.all()) {
            for (SampleChild child : SampleChild.CLASS) {
                oneDay(child, day);
            }
        }
        LocalDateTime visit = LocalDate.of(2026, 4, 30).atTime(9, 58, 14);
        look(SampleChild.of("q0605"), "T07", visit, "other", SampleLook.LEAD);
        return looks;
    }

    /** The hidden step of a simulated child. */
    int hidden(String child, String skill) {
        SampleChild who = SampleChild.of(child);
        return hidden.computeIfAbsent(child, c -> new HashMap<>()).computeIfAbsent(skill, s -> who.firstStep());
    }

    private void oneDay(SampleChild child, LocalDate day) {
        boolean byHand = child.scripted() && !day.isBefore(SampleDays.UNIT);
        boolean away = random.nextDouble() < 0.04;
        if (byHand || away || day.isBefore(child.start())) {
            return;
        }
        grow(child, day);
        if (child.id().equals("q0620") && random.nextDouble() < 0.6) {
            return;
        }
        int turn = SampleDays.tableGroups(day).indexOf(child.group());
        if (turn >= 0 && random.nextDouble() < 0.92) {
            List<String> skills = SampleDays.focus(day);
            String skill = skills.get(visit(child.group(), day) % skills.size());
            LocalDateTime at = day.atTime(9, 42 + 10 * turn).plusSeconds(random.nextInt(420));
            look(child, skill, at, "table", observer(day, turn));
            if (random.nextDouble() < 0.35) {
                String other = skills.get(random.nextInt(skills.size()));
                look(child, other, at.plusSeconds(40 + random.nextInt(60)), "table", observer(day, turn));
            }
        }
        String exit = EXIT_TASKS.get(day);
        if (exit != null) {
            look(child, exit, day.atTime(10, 51).plusSeconds(random.nextInt(500)), "exit_task", SampleLook.TEACHER);
        }
    }

    /** How often the group was at the table before: it works on the skills in turn. */
    private static int visit(int group, LocalDate day) {
        return (int) SampleDays.all().stream()
                .filter(d -> d.isBefore(day) && SampleDays.tableGroups(d).contains(group))
                .count();
    }

    private void grow(SampleChild child, LocalDate day) {
        double pace = child.scripted() ? 0.04 * child.firstStep() : child.pace();
        for (String skill : SampleDays.focus(day)) {
            int step = hidden(child.id(), skill);
            if (step < 5 && random.nextDouble() < pace * SHAPE[step - 1]) {
                hidden.get(child.id()).put(skill, step + 1);
            }
        }
    }

    private static String observer(LocalDate day, int turn) {
        if (day.equals(SampleDays.SUBSTITUTE)) {
            return SampleLook.SUBSTITUTE;
        }
        return day.getDayOfWeek().getValue() == 3 && turn == 1 ? SampleLook.CO_TEACHER : SampleLook.TEACHER;
    }

    private void look(SampleChild child, String skill, LocalDateTime at, String kind, String observer) {
        int truth = hidden(child.id(), skill);
        double luck = random.nextDouble();
        int step = luck < 0.12 ? Math.max(1, truth - 1) : luck > 0.95 ? Math.min(5, truth + 1) : truth;
        String help = help(step, kind);
        if (help.equals("cubes")) {
            step = Math.min(step, 3);
        }
        if (skill.equals("T08")) {
            step = afterLostWeek(child, at.toLocalDate(), step);
        }
        List<String> tags = new ArrayList<>();
        List<String> words = phrases.get(skill + "." + step);
        tags.add(words.get(random.nextInt(words.size())));
        if (step <= 2 && SLIPS.containsKey(skill) && random.nextDouble() < 0.3) {
            tags.add(SLIPS.get(skill));
        }
        if (step == 5) {
            tags.add(List.of("said", "showed", "drew").get(random.nextInt(3)));
        } else if (random.nextDouble() < 0.05) {
            tags.add(random.nextBoolean() ? "wrong_total" : "self_corrected");
        }
        if (observer.equals(SampleLook.SUBSTITUTE)) {
            tags.add("substitute");
        }
        String note = random.nextDouble() < 0.07 ? NOTES.get(random.nextInt(NOTES.size())) : "";
        List<String> tasks = TASKS.get(skill);
        String task = tasks.get(random.nextInt(tasks.size()));
        looks.add(new SampleLook(
                SampleLook.id(at, random), at, child.id(), skill, task, step, help, kind, observer,
                String.join(";", tags), note, "", false));
    }

    private String help(int step, String kind) {
        double luck = random.nextDouble();
        if (kind.equals("exit_task")) {
            return luck < 0.15 && step <= 3 ? "cubes" : "none";
        }
        if (luck < 0.06) {
            return "prompt";
        }
        if (luck < 0.08) {
            return "modelled";
        }
        return luck < (step <= 3 ? 0.35 : 0.15) ? "cubes" : "none";
    }

    private static int afterLostWeek(SampleChild child, LocalDate day, int step) {
        if (day.isBefore(SampleDays.LOST_FROM)) {
            return Math.max(child.firstStep() == 1 ? 2 : 3, step);
        }
        if (day.isAfter(SampleDays.LOST_TO.plusWeeks(1))) {
            return Math.max(Math.min(3, child.firstStep() + 1), step);
        }
        return DIPPED.contains(child.id()) ? Math.clamp(step - 1, 1, 2) : Math.max(3, step);
    }
}
