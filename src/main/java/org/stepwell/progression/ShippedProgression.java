package org.stepwell.progression;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.stepwell.core.progression.Progression;
import org.stepwell.platform.csv.Parsed;

/** The progression that comes with the program, in the same two files a teacher would take in. */
final class ShippedProgression {
    private ShippedProgression() {
    }

    private static final class Held {
        static final Progression PROGRESSION = read();
    }

    static Progression get() {
        return Held.PROGRESSION;
    }

    private static Progression read() {
        Parsed<Progression> read = ProgressionCsv.read(bytes("skills.csv"), bytes("phrases.csv"));
        if (!read.clean()) {
            throw new IllegalStateException("the progression of the program: " + read.problems());
        }
        return read.rows().getFirst();
    }

    private static byte[] bytes(String name) {
        try (InputStream in = ShippedProgression.class.getResourceAsStream("/sample-class/" + name)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks sample-class/" + name);
            }
            return in.readAllBytes();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
