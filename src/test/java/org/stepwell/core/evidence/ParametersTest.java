package org.stepwell.core.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class ParametersTest {
    private static String text() throws IOException {
        try (InputStream in = Objects.requireNonNull(Parameters.class.getResourceAsStream(Parameters.SHIPPED))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void theShippedSetIsWhole() {
        Parameters shipped = Parameters.shipped();
        assertThat(shipped.paces()).hasSizeGreaterThanOrEqualTo(3);
        assertThat(shipped.version()).isNotBlank();
    }

    @Test
    void errorsNameLineAndKeyAllAtOnce() throws IOException {
        String bad = text().replaceFirst("(?m)^break.down = .*$", "break.down = fast")
                .replaceFirst("(?m)^stale.days = .*$", "stale.days = 2.5")
                .replaceFirst("(?m)^shown.below = .*$", "shown.below = 7")
                .replaceFirst("(?m)^lead.days = .*$", "")
                .replaceFirst("(?m)^start.1 = .*$", "start.1 = 0.5 0.2 0.1 0.1 0.05")
                + "\nmagic = 1\nbreak.down = 0.01\nno sign here\n";
        int line = (int) bad.substring(0, bad.indexOf("break.down = fast")).lines().count() + 1;
        assertThatThrownBy(() -> Parameters.read(bad, "own.txt"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("own.txt")
                .hasMessageContaining("line " + line + ": break.down \"fast\" is not a number")
                .hasMessageContaining("stale.days must be a whole number of 1 to 60")
                .hasMessageContaining("shown.below 7 is not in 0.01 to 0.9")
                .hasMessageContaining("key lead.days is missing")
                .hasMessageContaining("start.1 must add up to 1, not 0.95")
                .hasMessageContaining("magic is not a known key")
                .hasMessageContaining("break.down was already given on line " + line)
                .hasMessageContaining("\"no sign here\" is not of the form key = value");
    }

    @Test
    void otherCountsOfPacesAreAccepted() throws IOException {
        String one = text().replaceFirst("(?m)^pace.weight = .*$", "pace.weight = 1")
                .replaceFirst("(?m)^pace.up = .*$", "pace.up = 0.05")
                .replaceAll("(?m)^start.[2-9] = .*$", "");
        assertThat(Parameters.read(one, "one.txt").paces()).hasSize(1);
    }
}
