package org.stepwell.sample;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Properties;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar.Break;
import org.stepwell.platform.csv.Parsed;
import org.stepwell.roster.RosterRow;

/**
 * The files of the sample class, all dates moved by whole weeks so that the last school day in them falls into the
 * seven days up to today.
 */
final class SampleFiles {
    private final Properties properties = new Properties();
    private final long weeks;

    SampleFiles(java.time.Instant now) {
        try (InputStream in = open("sample.properties")) {
            properties.load(in);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        LocalDate anchor = LocalDate.parse(property("anchor"));
        weeks = Math.floorDiv(java.time.temporal.ChronoUnit.DAYS.between(anchor, LocalDate.ofInstant(now, zone())), 7);
    }

    String property(String key) {
        return properties.getProperty(key).strip();
    }

    ZoneId zone() {
        return ZoneId.of(property("time_zone"));
    }

    LocalDate anchor() {
        return moved(LocalDate.parse(property("anchor")));
    }

    LocalDate moved(LocalDate day) {
        return day.plusWeeks(weeks);
    }

    private @Nullable LocalDate movedOrNull(@Nullable LocalDate day) {
        return day == null ? null : moved(day);
    }

    RosterRow moved(RosterRow row) {
        return new RosterRow(row.child(), row.givenName(), row.familyName(), row.grade(), row.className(),
                movedOrNull(row.start()), movedOrNull(row.end()));
    }

    PacingRow moved(PacingRow row) {
        return new PacingRow(row.skill(), movedOrNull(row.taughtFrom()), moved(row.due()), row.expectedStep());
    }

    Break moved(Break row) {
        return new Break(moved(row.from()), moved(row.to()), row.reason());
    }

    /** The same clock on the wall, whole weeks on. */
    Look moved(Look look) {
        return new Look(look.id(), look.observedAt().toLocalDateTime().plusWeeks(weeks).atZone(zone())
                .toOffsetDateTime(), look.child(), look.skill(), look.task(), look.step(), look.help(), look.kind(),
                look.observer(), look.tags(), look.note(), look.replaces(), look.withdrawn(), look.clockOffsetMs());
    }

    static byte[] bytes(String name) {
        try (InputStream in = open(name)) {
            return in.readAllBytes();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static InputStream open(String name) {
        InputStream in = SampleFiles.class.getResourceAsStream("/sample-class/" + name);
        if (in == null) {
            throw new IllegalStateException("the program lacks sample-class/" + name);
        }
        return in;
    }

    static <T> List<T> clean(String name, Parsed<T> parsed) {
        if (!parsed.clean()) {
            throw new IllegalStateException("sample-class/" + name + ": " + parsed.problems());
        }
        return parsed.rows();
    }
}
