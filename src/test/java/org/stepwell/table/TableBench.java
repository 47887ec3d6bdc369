package org.stepwell.table;

import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The benchmarks that need a browser: {@code ./stepwell bench faults} and {@code ./stepwell bench table}. */
@Command(name = "bench", mixinStandardHelpOptions = true, description = {
        "Benchmarks of the Table in a browser, before the real program; one JSON line for each measure.",
        "faults: a random campaign of faults; lost and doubled looks must be 0.",
        "table: from one tap to the visible confirmation, and what the page weighs."})
public final class TableBench implements Callable<Integer> {
    private static final int SLOWER = 4;
    private static final double MOST_MILLIS = 100;
    private static final double MOST_BYTES = 60 * 1024;

    @Spec
    private CommandLine.Model.CommandSpec spec;
    @Parameters(paramLabel = "NAME", description = "faults or table")
    private String name;
    @Option(names = "--quick", description = "a tenth of it, for a first look")
    private boolean quick;
    @Option(names = "--seed", paramLabel = "S", defaultValue = "1", description = "seed (${DEFAULT-VALUE})")
    private long seed;
    @Option(names = "--count", paramLabel = "N", defaultValue = "0", description = "faults or taps; 0: as usual")
    private int count;

    private TableBench() {
    }

    /** Runs one benchmark; exit code 0 when it held, 1 when it did not, 2 for a wrong call. */
    public static void main(String[] arguments) {
        System.exit(new CommandLine(new TableBench()).setParameterExceptionHandler((wrong, given) -> {
            System.err.println(wrong.getMessage());
            return 2;
        }).execute(arguments));
    }

    @Override
    public Integer call() throws IOException {
        if (count < 0) {
            throw new ParameterException(spec.commandLine(), "--count needs 0 or more, not " + count);
        }
        return switch (name) {
            case "faults" -> faults(count > 0 ? count : quick ? 200 : 2000);
            case "table" -> table(count > 0 ? count : quick ? 20 : 200);
            default -> throw new ParameterException(spec.commandLine(),
                    "bench \"" + name + "\" is not one of faults, table");
        };
    }

    private int faults(int faults) throws IOException {
        FaultPlan plan = FaultPlan.of(seed, faults);
        System.err.println("seed " + seed + ", " + plan.counts());
        Path profile = Files.createTempDirectory("stepwell-tablet");
        try (FaultyDay day = new FaultyDay();
                FaultCampaign campaign = new FaultCampaign(day, profile, new Promises("b1x"))) {
            FaultCampaign.Result result = campaign.run(plan, struck -> {
                if (struck % 50 == 0) {
                    System.err.println(struck + " faults");
                }
            });
            Promises.Verdict verdict = result.verdict();
            int kills = plan.counts().getOrDefault(FaultPlan.Strike.SERVER_KILLED, 0);
            line("faults.met", result.faults(), "faults", "asked " + faults, (double) result.faults() / faults);
            line("faults.server_kills", (double) kills / faults, "share", "limit 0.05", kills / (0.05 * faults));
            line("faults.looks_called_saved", result.looks(), "looks", "faults met",
                    (double) result.looks() / result.faults());
            none("faults.lost", verdict.lost());
            none("faults.doubled", verdict.doubled());
            none("faults.wrong_adult_child_or_day", verdict.wrong());
            none("faults.out_of_order", verdict.unordered());
            none("faults.never_tapped", verdict.phantoms());
            none("faults.screen_said_more_than_true", result.overstated());
            return result.clean() ? 0 : 1;
        }
    }

    private void none(String measure, List<String> found) {
        found.forEach(one -> System.err.println(measure + ": " + one));
        line(measure, found.size(), "looks", "limit 0", Double.NaN);
    }

    private int table(int taps) {
        try (FaultyDay day = new FaultyDay();
                Tablet tablet = Tablet.inWindow(day.browser(), day.proxy().address(), new Promises("b2x"))) {
            tablet.signIn(FaultyDay.TEACHER);
            tablet.openVisit();
            CDPSession devtools = tablet.context().newCDPSession(tablet.page());
            JsonObject slower = new JsonObject();
            slower.addProperty("rate", SLOWER);
            devtools.send("Emulation.setCPUThrottlingRate", slower);
            List<Double> millis = new ArrayList<>();
            for (int tap = 0; tap < taps; tap++) {
                millis.add(tablet.millisToConfirmation(Tablet.CHILDREN.get(tap % 4), 1 + tap % 5));
            }
            Collections.sort(millis);
            double median = millis.get(millis.size() / 2);
            double high = millis.get((int) Math.ceil(0.95 * millis.size()) - 1);
            line("table.tap_to_confirmation_median", median, "ms", "limit 100, CPU slowed 4 times", median / MOST_MILLIS);
            line("table.tap_to_confirmation_p95", high, "ms", "limit 100, CPU slowed 4 times", high / MOST_MILLIS);
            long weight = weight(tablet, day.proxy().address());
            line("table.page_weight_sent", weight, "bytes", "limit 61440, compressed", weight / MOST_BYTES);
            return median < MOST_MILLIS && weight < MOST_BYTES ? 0 : 1;
        }
    }

    /** Bytes of the bodies as the server sends them to a browser that takes gzip: all that the page keeps, and its worker. */
    private static long weight(Tablet tablet, String address) {
        tablet.untilKeptForOffline();
        List<?> loaded = (List<?>) tablet.page().evaluate("async () => { const paths = new Set(['/table/worker.js']);"
                + " for (const name of await caches.keys()) { for (const kept of await (await caches.open(name)).keys())"
                + " { paths.add(new URL(kept.url).pathname); } }"
                + " paths.delete('/table/whole'); return [...paths]; }");
        try (HttpClient client = HttpClient.newHttpClient()) {
            long sum = 0;
            for (Object path : loaded) {
                HttpResponse<byte[]> answer = client.send(HttpRequest.newBuilder(URI.create(address + path))
                        .header("Accept-Encoding", "gzip").build(), HttpResponse.BodyHandlers.ofByteArray());
                sum += answer.body().length;
            }
            return sum;
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(stopped);
        }
    }

    private void line(String measure, double value, String unit, String against, double ratio) {
        String text = String.format(Locale.ROOT,
                "{\"name\":\"%s\",\"value\":%s,\"unit\":\"%s\",\"against\":\"%s\",\"ratio\":%s}\n", measure,
                number(value), unit, against, number(ratio));
        System.out.print(text);
        System.out.flush();
    }

    private static String number(double value) {
        return !Double.isFinite(value) ? "null" : value == Math.rint(value)
                ? Long.toString((long) value) : String.format(Locale.ROOT, "%.6f", value);
    }
}
