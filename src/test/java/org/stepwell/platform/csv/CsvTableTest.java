package org.stepwell.platform.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvTableTest {
    private static final List<String> COLUMNS = List.of("child", "note");

    @Test
    void takesColumnsInAnyOrderWithAByteOrderMarkAndEitherLineEnd() {
        Parsed<String> parsed = parse("\uFEFFnote,child,shoe\r\nfast,c1,31\r\nslow,c2,32\n");
        assertThat(parsed.rows()).containsExactly("c1:fast", "c2:slow");
        assertThat(parsed.unknownColumns()).containsExactly("shoe");
        assertThat(parsed.problems()).isEmpty();
    }

    @Test
    void keepsCommasQuotesAndLinesInsideQuotesAndCountsLinesOn() {
        Parsed<String> parsed = parse("child,note\nc1,\"a, \"\"b\"\"\nc\"\n,no child\n");
        assertThat(parsed.rows()).containsExactly("c1:a, \"b\"\nc");
        assertThat(parsed.problems()).singleElement().satisfies(problem -> {
            assertThat(problem.line()).isEqualTo(4);
            assertThat(problem.column()).isEqualTo("child");
        });
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "  \n", "\uFEFF"})
    void saysThatAnEmptyFileIsEmpty(String text) {
        assertThat(parse(text).problems()).singleElement().asString().contains("empty", "child, note");
    }

    @Test
    void namesWhatAWrongHeaderLacks() {
        assertThat(parse("pupil,note\nc1,x\n").problems()).singleElement().asString()
                .contains("line 1", "lacks child", "pupil");
    }

    @Test
    void refusesAColumnThatStandsTwice() {
        assertThat(parse("child,note,note\nc1,x,y\n").problems()).singleElement().asString().contains("note", "twice");
    }

    @Test
    void saysThatBytesAreNotUtf8() {
        byte[] latin = "child,note\nc1,caf\u00e9\n".getBytes(StandardCharsets.ISO_8859_1);
        assertThat(CsvTable.read(latin, COLUMNS, List.of()).problems()).singleElement().asString().contains("UTF-8");
    }

    @Test
    void saysThatAQuoteIsNotClosed() {
        assertThat(parse("child,note\nc1,\"open\nc2,x\n").problems()).singleElement().asString().contains("quote");
    }

    @Test
    void reportsOneBadRowInAThousandAndKeepsTheRest() {
        StringBuilder text = new StringBuilder("child,note\n");
        for (int i = 1; i <= 1000; i++) {
            text.append(i == 617 ? "c617\n" : "c" + i + ",x\n");
        }
        Parsed<String> parsed = parse(text.toString());
        assertThat(parsed.rows()).hasSize(999);
        assertThat(parsed.problems()).singleElement().asString().contains("line 618", "1 cells", "2");
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n"})
    void countsEmptyLinesAndLinesInsideQuotesWhereTheyStand(String end) {
        String text = String.join(end, "", "child,note", "", "c1,\"a", "b\"", "", "", "c2", "", ",x", "c3,x");
        assertThat(parse(text).problems()).extracting(CsvProblem::line).containsExactly(8L, 10L);
        assertThat(parse(text).rows()).hasSize(2);
    }

    @Test
    void namesTheCellWithACharacterThatNoTextHas() {
        assertThat(parse("child,note\nc1,a\0b\nc2,x\n").problems()).singleElement().asString()
                .contains("line 2", "column note", "NUL");
    }

    @Test
    void readsACellOfAMillionCharacters() {
        String huge = "word ".repeat(200_000) + "end";
        assertThat(parse("child,note\nc1,\"" + huge + "\"\nc2,x\n").rows()).containsExactly("c1:" + huge, "c2:x");
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+7", "-x", "@cmd", "'=1", "''=1", "'quoted", "-3", "plain", "\ttab", "a\rb", "="})
    void bringsBackEveryCellThatWasWritten(String cell) {
        String written = new CsvWriter(COLUMNS).row("c1", cell).toString();
        assertThat(parse(written).rows()).containsExactly("c1:" + cell);
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+7", "-x", "@cmd"})
    void neverWritesACellThatASpreadsheetRuns(String cell) {
        assertThat(new CsvWriter(COLUMNS).row("c1", cell).toString()).contains("c1,'" + cell);
    }

    private static Parsed<String> parse(String text) {
        return CsvTable.read(text.getBytes(StandardCharsets.UTF_8), COLUMNS, List.of())
                .parse(row -> row.required("child") + ":" + row.text("note"), row -> row);
    }
}
