package org.stepwell.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.tier.RuleFile;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** Rules named on the command line: those that ship by name, any other as a file. */
final class RulesOption {
    private RulesOption() {
    }

    /**
     * The rules.
     *
     * @throws ParameterException when the value is neither a name nor a file
     * @throws BadFiles naming every bad line and key of the file
     */
    static RuleFile rules(CommandSpec spec, String option, String value) {
        if (RuleFile.SHIPPED.contains(value)) {
            return RuleFile.shipped(value);
        }
        Path file = file(value);
        if (file == null || !Files.exists(file)) {
            throw new ParameterException(spec.commandLine(), option + " " + value + " is neither a file nor one of "
                    + String.join(", ", RuleFile.SHIPPED));
        }
        try {
            return RuleFile.read(new String(InputFiles.bytes(file), StandardCharsets.UTF_8), value);
        } catch (IllegalArgumentException wrong) {
            throw new BadFiles(wrong.getMessage());
        }
    }

    private static @Nullable Path file(String value) {
        try {
            return Path.of(value);
        } catch (InvalidPathException noName) {
            return null;
        }
    }
}
