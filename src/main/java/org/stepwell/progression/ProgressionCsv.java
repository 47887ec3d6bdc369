package org.stepwell.progression;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.stepwell.core.problem.Problem;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.progression.Progression.Need;
import org.stepwell.core.progression.Progression.Phrase;
import org.stepwell.core.progression.Progression.Skill;
import org.stepwell.platform.csv.CsvProblem;
import org.stepwell.platform.csv.CsvRow;
import org.stepwell.platform.csv.CsvTable;
import org.stepwell.platform.csv.CsvWriter;
import org.stepwell.platform.csv.Parsed;

/**
 * The files {@code skills.csv} and {@code phrases.csv}. A need is written {@code T04>=2}, or {@code 5:T05>=3} when it
 * holds only before step 5 of the needing skill.
 */
public final class ProgressionCsv {
    private static final List<String> SKILLS = List.of("progression", "skill", "title", "needs", "standards");
    private static final List<String> PHRASES = List.of("skill", "code", "step", "language", "text", "kind");
    private static final Pattern NEED = Pattern.compile("(?:([1-5]):)?([^>:;]+)>=([1-5])");

    private ProgressionCsv() {
    }

    private record SkillLine(String progression, Skill skill) {}

    /** Reads both files; the result has one progression when nothing is wrong, else none. */
    public static Parsed<Progression> read(byte[] skillsFile, byte[] phrasesFile) {
        Parsed<SkillLine> skills = CsvTable.read(skillsFile, SKILLS, List.of())
                .parse(ProgressionCsv::skill, line -> line.skill().code());
        Parsed<Phrase> phrases = CsvTable.read(phrasesFile, PHRASES, List.of())
                .parse(ProgressionCsv::phrase, p -> List.of(p.skill(), p.kind(), p.code(), p.language(),
                        p.kind() == Phrase.Kind.HELP ? Objects.requireNonNullElse(p.step(), 0) : 0));
        List<CsvProblem> problems = new ArrayList<>(skills.problems());
        problems.addAll(phrases.problems());
        List<String> unknown = new ArrayList<>(skills.unknownColumns());
        unknown.addAll(phrases.unknownColumns());
        Set<String> names = skills.rows().stream().map(SkillLine::progression).collect(Collectors.toSet());
        if (names.size() != 1) {
            problems.add(new CsvProblem(0, "progression", Problem.of("progression.one", names.size())));
            return new Parsed<>(List.of(), problems, unknown);
        }
        Progression read = new Progression(names.iterator().next(),
                skills.rows().stream().map(SkillLine::skill).toList(), phrases.rows());
        problems.addAll(check(read));
        return new Parsed<>(problems.isEmpty() ? List.of(read) : List.of(), problems, unknown);
    }

    private static SkillLine skill(CsvRow row) {
        List<Need> needs = new ArrayList<>();
        for (String text : row.text("needs").split(";")) {
            if (!text.isBlank()) {
                Matcher need = NEED.matcher(text.strip());
                if (!need.matches()) {
                    throw new CsvRow.Bad("needs", "progression.need", text);
                }
                int before = need.group(1) == null ? 1 : Integer.parseInt(need.group(1));
                needs.add(new Need(before, need.group(2).strip(), Integer.parseInt(need.group(3))));
            }
        }
        List<String> standards = Arrays.stream(row.text("standards").split(";")).map(String::strip)
                .filter(s -> !s.isEmpty()).toList();
        return new SkillLine(row.required("progression"),
                new Skill(row.required("skill"), row.required("title"), needs, standards));
    }

    private static Phrase phrase(CsvRow row) {
        return new Phrase(row.required("skill"), row.required("code"), row.stepOrNull("step"),
                row.read("language", ProgressionCsv::language), row.required("text"),
                row.read("kind", ProgressionCsv::kind));
    }

    private static String language(String text) {
        if (!text.equals("en") && !text.equals("es")) {
            throw new Refused("progression.language");
        }
        return text;
    }

    private static Phrase.Kind kind(String text) {
        return switch (text) {
            case "phrase" -> Phrase.Kind.PHRASE;
            case "help" -> Phrase.Kind.HELP;
            case "error" -> Phrase.Kind.ERROR;
            default -> throw new Refused("progression.kind");
        };
    }

    private static List<CsvProblem> check(Progression read) {
        List<CsvProblem> problems = new ArrayList<>();
        Set<String> codes = read.skills().stream().map(Skill::code).collect(Collectors.toSet());
        for (Skill skill : read.skills()) {
            skill.needs().stream().filter(n -> !codes.contains(n.skill())).forEach(n -> problems.add(
                    new CsvProblem(0, "needs", Problem.of("progression.needs", skill.code(), n.skill()))));
        }
        read.phrases().stream().filter(p -> !codes.contains(p.skill())).map(Phrase::skill).distinct()
                .forEach(s -> problems.add(new CsvProblem(0, "skill", Problem.of("progression.phrases", s))));
        read.phrases().stream().filter(p -> p.kind() == Phrase.Kind.PHRASE && p.step() == null)
                .forEach(p -> problems.add(new CsvProblem(0, "step", Problem.of("progression.no-step", p.code(), p.skill()))));
        if (problems.isEmpty()) {
            circle(read).forEach(path -> problems.add(new CsvProblem(0, "needs", Problem.of("progression.circle", path))));
        }
        return problems;
    }

    /** Steps that come back to themselves, where a step also needs the one below it. */
    private static List<String> circle(Progression read) {
        Set<String> done = new HashSet<>();
        for (Skill skill : read.skills()) {
            for (int step = 1; step <= 5; step++) {
                Deque<String> path = new ArrayDeque<>();
                if (walk(read, skill, step, path, done)) {
                    return List.of(String.join(" needs ", path));
                }
            }
        }
        return List.of();
    }

    private static boolean walk(Progression read, Skill skill, int step, Deque<String> path, Set<String> done) {
        String node = skill.code() + "." + step;
        if (path.contains(node)) {
            path.addLast(node);
            return true;
        }
        if (done.contains(node)) {
            return false;
        }
        path.addLast(node);
        if (step > 1 && walk(read, skill, step - 1, path, done)) {
            return true;
        }
        for (Need need : skill.needs()) {
            if (need.beforeStep() == step
                    && walk(read, read.skill(need.skill()).orElseThrow(), need.step(), path, done)) {
                return true;
            }
        }
        path.removeLast();
        done.add(node);
        return false;
    }

    /** Writes {@code skills.csv}. */
    public static String writeSkills(Progression progression) {
        CsvWriter out = new CsvWriter(SKILLS);
        for (Skill skill : progression.skills()) {
            out.row(progression.code(), skill.code(), skill.title(),
                    skill.needs().stream().map(n -> (n.beforeStep() == 1 ? "" : n.beforeStep() + ":") + n.skill()
                            + ">=" + n.step()).collect(Collectors.joining(";")),
                    String.join(";", skill.standards()));
        }
        return out.toString();
    }

    /** Writes {@code phrases.csv}. */
    public static String writePhrases(Progression progression) {
        CsvWriter out = new CsvWriter(PHRASES);
        progression.phrases().forEach(p -> out.row(p.skill(), p.code(), p.step(), p.language(), p.text(),
                p.kind().name().toLowerCase(Locale.ROOT)));
        return out.toString();
    }
}
