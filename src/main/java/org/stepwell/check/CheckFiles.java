package org.stepwell.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.check.Mark;
import org.stepwell.core.check.Responses;
import org.stepwell.core.problem.Problem;
import org.stepwell.platform.csv.CsvProblem;
import org.stepwell.platform.csv.Parsed;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.Seen;
import org.stepwell.roster.ChildRow;

/** Answers of a check in and out as responses.csv. */
@Service
@Transactional
public class CheckFiles {
    private final CheckService checks;
    private final AccessRecordService record;

    CheckFiles(CheckService checks, AccessRecordService record) {
        this.record = record;
        this.checks = checks;
    }

    /**
     * What a file would do.
     *
     * @param problems bad rows, unknown children and items; nothing is stored while there are any
     * @param taps marks that differ from what stands
     */
    public record Intake(List<CsvProblem> problems, List<CheckService.Tap> taps) {}

    /** The answers of those who sat the check; written down in the record of each of them. */
    public String export(UUID checkId) {
        CheckSheet sheet = checks.sheet(checkId);
        record.seen(sheet.sat().stream().map(ChildRow::childId).toList(), Seen.CHECK_FILE);
        return ResponsesCsv.write(new ResponsesCsv.Sheet(sheet.sat().stream().map(ChildRow::schoolKey).toList(),
                sheet.responses()));
    }

    /**
     * Reads a file without storing anything. An empty cell of a row with answers is an item not reached; a row without
     * any answer is a child who was not there and is left aside.
     */
    public Intake read(UUID checkId, byte[] file) {
        CheckSheet sheet = checks.sheet(checkId);
        Parsed<ResponsesCsv.Sheet> read = ResponsesCsv.read(file);
        List<CsvProblem> problems = new ArrayList<>(read.problems());
        List<CheckService.Tap> taps = new ArrayList<>();
        if (read.rows().isEmpty()) {
            return new Intake(problems, taps);
        }
        ResponsesCsv.Sheet answers = read.rows().getFirst();
        Map<String, ChildRow> children = new HashMap<>();
        sheet.children().forEach(c -> children.put(c.schoolKey(), c));
        for (Responses.Item item : answers.responses().items()) {
            if (sheet.items().stream().noneMatch(i -> i.code().equals(item.id()))) {
                problems.add(new CsvProblem(1, item.id(), Problem.of("check.no-item-in-file")));
            }
        }
        for (int c = 0; c < answers.children().size(); c++) {
            ChildRow child = children.get(answers.children().get(c));
            if (child == null) {
                problems.add(new CsvProblem(0, "child", Problem.of("check.no-child", answers.children().get(c))));
            } else if (problems.isEmpty()) {
                taps.addAll(taps(sheet, child, answers.responses(), c));
            }
        }
        return new Intake(problems, problems.isEmpty() ? taps : List.of());
    }

    private static List<CheckService.Tap> taps(CheckSheet sheet, ChildRow child, Responses responses, int row) {
        Map<String, CheckCell> there = new HashMap<>();
        sheet.cells().stream().filter(c -> c.entry() == 1 && c.childId().equals(child.childId()))
                .forEach(c -> there.put(c.item(), c));
        double[] marks = responses.rows().get(row);
        List<CheckService.Tap> taps = new ArrayList<>();
        if (java.util.Arrays.stream(marks).allMatch(Double::isNaN)) {
            return taps;
        }
        for (int i = 0; i < marks.length; i++) {
            Mark mark = Double.isNaN(marks[i]) ? Mark.NOT_REACHED : marks[i] == 1 ? Mark.RIGHT
                    : marks[i] == 0 ? Mark.WRONG : Mark.HALF;
            String code = responses.items().get(i).id();
            CheckCell cell = there.get(code);
            if (cell == null || cell.mark() != mark) {
                taps.add(new CheckService.Tap(child.childId(), code, 1, cell == null ? 0 : cell.number(), mark, null));
            }
        }
        return taps;
    }

    /** Stores what a file would do; gives how many cells changed. */
    public int take(UUID checkId, Intake intake) {
        return (int) checks.mark(checkId, intake.taps()).stream().filter(CheckService.Marked::stored).count();
    }
}
