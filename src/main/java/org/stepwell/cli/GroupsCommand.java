package org.stepwell.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.stepwell.core.grouping.Contradiction;
import org.stepwell.core.grouping.GroupChild;
import org.stepwell.core.grouping.GroupFinder;
import org.stepwell.core.grouping.Grouping;
import org.stepwell.core.grouping.GroupingTask;
import org.stepwell.core.grouping.Proposal;
import org.stepwell.core.grouping.SeatReason;
import org.stepwell.core.grouping.Wish;
import org.stepwell.core.wording.GroupingWording;
import org.stepwell.core.wording.Language;
import org.stepwell.grouping.ChildrenCsv;
import org.stepwell.platform.csv.CsvWriter;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Proposes groups for the children of a file. */
@Command(name = "groups", mixinStandardHelpOptions = true, description = {
        "Proposes groups whose sizes differ by at most one, by skill, step and support, keeping every wish.",
        "Columns: child, tier, focus_skill, estimate (a step, 0 to 5), last_group; what is empty is not known.",
        "Wishes that cannot be kept are named and no file is written. The same input gives the same bytes.",
        "An id with a colon or comma in it is understood where only one reading names children of the file;",
        "else put a backslash before the colon or comma. The options may be given several times."})
final class GroupsCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "CHILDREN.csv", description = "one row per child")
    private Path file;
    @Option(names = "--groups", required = true, paramLabel = "N", description = "how many groups, 1 to 100")
    private int groups;
    @Option(names = "--apart", paramLabel = "A:B,...", description = "pairs who are not to sit in one group")
    private List<String> apart = new ArrayList<>();
    @Option(names = "--together", paramLabel = "A:B,...", description = "pairs who are to sit in one group")
    private List<String> together = new ArrayList<>();
    @Option(names = "--out", required = true, paramLabel = "F", description = "file for the result")
    private Path out;
    @Option(names = "--skip-bad-rows", description = "take the good rows of a file with bad ones")
    private boolean skipBadRows;

    @Override
    public Integer call() {
        if (groups < 1 || groups > GroupingTask.MOST) {
            throw new ParameterException(spec.commandLine(), "--groups needs 1 to " + GroupingTask.MOST + ", not "
                    + groups);
        }
        wishes(Set.of());
        InputFiles files = new InputFiles(spec.commandLine().getErr(), skipBadRows);
        List<GroupChild> children = files.read(file, ChildrenCsv::read);
        files.refuseIfBad();
        if (children.isEmpty() || children.size() > GroupingTask.MOST) {
            throw new BadFiles(file + " holds " + children.size() + " children to group; 1 to " + GroupingTask.MOST
                    + " are needed");
        }
        Set<String> known = children.stream().map(GroupChild::id).collect(Collectors.toCollection(TreeSet::new));
        GroupingTask task = GroupingTask.of(children, groups, wishes(known));
        switch (GroupFinder.propose(task)) {
            case Proposal.Impossible not -> throw new BadFiles(words(not.contradictions()));
            case Proposal.Groups found -> write(task, found.grouping());
        }
        if (children.size() < groups) {
            spec.commandLine().getErr().println("There are fewer children than groups: groups "
                    + (children.size() + 1) + " to " + groups + " stay empty.");
            spec.commandLine().getErr().flush();
        }
        return 0;
    }

    /** The wishes as given; with no children known, a check that they are pairs at all. */
    private List<Wish> wishes(Set<String> known) {
        List<Wish> wishes = new ArrayList<>();
        read("--apart", apart, known, Wish.Apart::new, wishes);
        read("--together", together, known, Wish.Together::new, wishes);
        return wishes;
    }

    private void read(String option, List<String> texts, Set<String> known,
            BiFunction<String, String, Wish> wish, List<Wish> wishes) {
        for (String text : texts) {
            if (known.isEmpty() && text.indexOf(':') < 0) {
                throw new ParameterException(spec.commandLine(), option + " \"" + text
                        + "\" is no list of pairs like A:B,C:D");
            }
            if (!known.isEmpty()) {
                try {
                    PairText.read(text, known).forEach(p -> wishes.add(wish.apply(p.one(), p.other())));
                } catch (IllegalArgumentException wrong) {
                    throw new ParameterException(spec.commandLine(), option + " " + wrong.getMessage());
                }
            }
        }
    }

    private static String words(List<Contradiction> contradictions) {
        GroupingWording words = new GroupingWording(Language.ENGLISH);
        return contradictions.stream().map(c -> words.contradiction(c, UnaryOperator.identity()))
                .collect(Collectors.joining("\n"));
    }

    private void write(GroupingTask task, Grouping grouping) {
        GroupingWording words = new GroupingWording(Language.ENGLISH);
        CsvWriter result = new CsvWriter(List.of("child", "group", "reason"));
        SeatReason.of(task, grouping.groupOf()).stream()
                .sorted(Comparator.comparing((SeatReason r) -> grouping.groupOf().get(r.child())))
                .forEach(reason -> result.row(reason.child(), grouping.groupOf().get(reason.child()),
                        words.reason(reason, UnaryOperator.identity(), task.children().stream().map(GroupChild::id)
                                .filter(id -> !id.equals(reason.child())).toList())));
        try {
            Files.writeString(out, result.toString());
        } catch (IOException failed) {
            throw new BadFiles(out + " cannot be written; check that its folder exists and may be written to");
        }
    }
}
