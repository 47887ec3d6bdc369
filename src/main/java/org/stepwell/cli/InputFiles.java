package org.stepwell.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.stepwell.platform.csv.Parsed;

/** Reads the files of a command and reports every bad row of all of them before anything is written. */
final class InputFiles {
    private final PrintWriter err;
    private final boolean skipBadRows;
    private final List<String> refusals = new ArrayList<>();
    private boolean restIsUsable = true;

    InputFiles(PrintWriter err, boolean skipBadRows) {
        this.err = err;
        this.skipBadRows = skipBadRows;
    }

    <T> List<T> read(Path file, Function<byte[], Parsed<T>> reader) {
        Parsed<T> parsed = reader.apply(bytes(file));
        parsed.unknownColumns().forEach(column -> err.println(file + ": column " + column + " is unknown and ignored"));
        parsed.problems().forEach(problem -> err.println(file + ": " + problem));
        boolean wholeFile = parsed.problems().stream().anyMatch(problem -> problem.line() <= 1);
        restIsUsable &= !wholeFile;
        if (wholeFile || !skipBadRows && !parsed.clean()) {
            refusals.add(file + " was not taken: " + parsed.problems().size() + " problem"
                    + (parsed.problems().size() == 1 ? "" : "s"));
        }
        err.flush();
        return parsed.rows();
    }

    static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException failed) {
            throw new BadFiles(file + " cannot be read; check the name and that it may be read");
        }
    }

    void refuseIfBad() {
        if (!refusals.isEmpty()) {
            throw new BadFiles(String.join("\n", refusals) + "\n" + (restIsUsable
                    ? "Mend the rows above, or take the rest with --skip-bad-rows."
                    : "Mend what is named above; a file whose header or text does not fit has no rows to take."));
        }
    }
}
