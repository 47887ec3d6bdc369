package org.stepwell.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stepwell.check.ResponsesCsv;
import org.stepwell.core.check.ItemReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Statistics of a unit check as JSON. */
@Command(name = "item-report", mixinStandardHelpOptions = true, description = {
        "Item and test statistics of a unit check as JSON.",
        "Columns: child, then one per item with 1, 0, 0.5 or nothing; a row \"#skill\" may name the items' skills."})
final class ItemReportCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;
    @Parameters(paramLabel = "RESPONSES.csv", description = "one row per child")
    private Path file;
    @Option(names = "--out", paramLabel = "F", description = "file for the result; else it is printed")
    private @Nullable Path out;
    @Option(names = "--skip-bad-rows", description = "take the good rows of a file with bad ones")
    private boolean skipBadRows;

    @Override
    public Integer call() {
        InputFiles files = new InputFiles(spec.commandLine().getErr(), skipBadRows);
        List<ResponsesCsv.Sheet> read = new ArrayList<>(files.read(file, ResponsesCsv::read));
        files.refuseIfBad();
        String json = json(ItemReport.of(read.getFirst().responses())) + "\n";
        if (out == null) {
            spec.commandLine().getOut().print(json);
            spec.commandLine().getOut().flush();
            return 0;
        }
        try {
            Files.writeString(out, json);
        } catch (IOException failed) {
            throw new BadFiles(out + " cannot be written; check that its folder exists and may be written to");
        }
        return 0;
    }

    private static String json(ItemReport report) {
        JsonMapper mapper = JsonMapper.shared();
        ObjectNode all = mapper.createObjectNode();
        all.put("n", report.n()).put("items_count", report.items().size()).put("mean", report.mean())
                .put("sd", report.sd()).put("kr20", report.kr20()).put("alpha", report.alpha())
                .put("sem", report.sem());
        var items = all.putArray("items");
        for (ItemReport.ItemLine item : report.items()) {
            items.addObject().put("id", item.id()).put("skill", item.skill()).put("p", item.p())
                    .put("r_rest", item.rRest()).put("alpha_without", item.alphaWithout())
                    .put("discrimination", item.discrimination()).put("not_reached", item.notReached());
        }
        return mapper.writerWithDefaultPrettyPrinter().writeValueAsString(all);
    }
}
