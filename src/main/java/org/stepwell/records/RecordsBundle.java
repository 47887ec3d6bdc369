package org.stepwell.records;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.csv.CsvWriter;
import org.stepwell.platform.pdf.PdfDocument;
import org.stepwell.platform.pdf.PdfDocument.Paper;
import org.stepwell.platform.ui.Words;
import org.w3c.dom.Element;
import tools.jackson.databind.json.JsonMapper;

/**
 * The records on a child as one zip: {@code index.pdf} to read, {@code records.json} and a CSV file per kind to take
 * elsewhere. All three hold the same rows.
 */
final class RecordsBundle {
    /** Machine's detail that a reader of the PDF finds in the other files. */
    private static final Set<String> ONLY_IN_FILES = Set.of("evidence", "digest", "clock_offset_ms");
    /** A time to the fraction of a second with its offset, of which people read day, hour and minute. */
    private static final Pattern MOMENT = Pattern.compile(
            "^(\\d{4}-\\d\\d-\\d\\d)T(\\d\\d:\\d\\d)[0-9:.]*(?:Z|[+-]\\d\\d:\\d\\d)$");
    private static final String STYLE = "body { font-size: 10pt; line-height: 1.4 } h1 { font-size: 1.7em; "
            + "font-weight: normal; margin: 0 } h2 { font-size: 1.2em; font-weight: normal; margin: 1.2em 0 0.3em 0; "
            + "border-bottom: 0.7pt solid #1b1b1b; page-break-after: avoid } p { margin: 0.3em 0 } "
            + "table { border-collapse: collapse; width: 100% } th { text-align: left; font-weight: normal; "
            + "color: #444444 } th, td { padding: 0.15em 0.8em 0.15em 0; border-bottom: 0.3pt solid #999999; "
            + "vertical-align: top } .row { margin: 0.35em 0; word-wrap: break-word } .soft { color: #444444 }";

    private final ChildRecords records;
    private final Words words;
    private final Language language;

    RecordsBundle(ChildRecords records, Language language) {
        this.records = records;
        this.words = Words.of("records", language);
        this.language = language;
    }

    /** The zip. */
    byte[] zip() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(bytes, StandardCharsets.UTF_8)) {
            entry(out, "index.pdf", pdf());
            entry(out, "records.json", json().getBytes(StandardCharsets.UTF_8));
            for (Map.Entry<RecordKind, List<Map<String, @Nullable Object>>> kind : records.rows().entrySet()) {
                if (!kind.getValue().isEmpty()) {
                    entry(out, file(kind.getKey()), csv(kind.getValue()).getBytes(StandardCharsets.UTF_8));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the bundle could not be put together", e);
        }
        return bytes.toByteArray();
    }

    private void entry(ZipOutputStream out, String name, byte[] content) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        // Without a time of its own an entry takes that of the machine, not the one the program goes by.
        entry.setTimeLocal(LocalDateTime.of(records.on(), LocalTime.NOON));
        out.putNextEntry(entry);
        out.write(content);
        out.closeEntry();
    }

    private static String file(RecordKind kind) {
        return "csv/" + kind.code() + ".csv";
    }

    private static String csv(List<Map<String, @Nullable Object>> rows) {
        CsvWriter out = new CsvWriter(new ArrayList<>(rows.getFirst().keySet()));
        rows.forEach(row -> out.row(row.values().toArray()));
        return out.toString();
    }

    private String json() {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("made_on", records.on().toString());
        all.put("made_for", records.purpose().code());
        all.put("made_by", records.adult());
        records.rows().forEach((kind, rows) -> all.put(kind.code(), rows));
        return JsonMapper.builder().build().writerWithDefaultPrettyPrinter().writeValueAsString(all);
    }

    private byte[] pdf() {
        PdfDocument document = new PdfDocument(words.say("title", records.name()), language.code(), Paper.LETTER, STYLE);
        Element body = document.body();
        document.add(body, "h1", "", words.say("title", records.name()));
        document.add(body, "p", "soft", words.say("made", words.day(records.on()), records.on().getYear() + "",
                records.adult()));
        document.add(body, "p", "", words.say("purpose." + records.purpose().code()));
        document.add(body, "p", "", words.say("others"));
        statements(document, body);
        document.add(body, "h2", "", words.say("files"));
        Element table = document.add(body, "table", "", "");
        Element head = document.add(table, "tr", "", "");
        List.of("kind", "rows", "file").forEach(key -> document.add(head, "th", "", words.say(key)));
        records.rows().forEach((kind, rows) -> {
            Element row = document.add(table, "tr", "", "");
            document.add(row, "td", "", words.say("kind." + kind.code()));
            document.add(row, "td", "", String.valueOf(rows.size()));
            document.add(row, "td", "", rows.isEmpty() ? words.say("nothing") : file(kind));
        });
        document.add(body, "p", "soft", words.say("columns"));
        records.rows().forEach((kind, rows) -> {
            if (!rows.isEmpty()) {
                document.add(body, "h2", "", words.say("kind." + kind.code()));
                rows.forEach(row -> document.add(body, "p", "row", line(row)));
            }
        });
        return document.render();
    }

    /** 34 CFR 99.21 (c): a statement is disclosed with the record it contests, so it stands before all of it. */
    private void statements(PdfDocument document, Element body) {
        List<Map<String, @Nullable Object>> steps = records.rows().getOrDefault(RecordKind.FAMILY_REQUEST_STEPS, List.of())
                .stream().filter(row -> "statement".equals(row.get("kind"))).toList();
        if (!steps.isEmpty()) {
            document.add(body, "h2", "", words.say("statements"));
            steps.forEach(row -> document.add(body, "p", "", words.say("statement", row.get("done_on"), row.get("words"))));
        }
    }

    private static String line(Map<String, @Nullable Object> row) {
        return row.entrySet().stream().filter(e -> !e.getKey().endsWith("_id") || e.getKey().equals("class_id"))
                .filter(e -> !ONLY_IN_FILES.contains(e.getKey()) && e.getValue() != null
                        && !e.getValue().toString().isEmpty())
                .filter(e -> !e.getKey().equals("withdrawn") || Boolean.TRUE.equals(e.getValue()))
                .map(e -> e.getKey().replaceAll("_id$", "").replace('_', ' ') + ": "
                        + MOMENT.matcher(e.getValue().toString()).replaceFirst("$1 $2"))
                .collect(Collectors.joining(" · "));
    }
}
