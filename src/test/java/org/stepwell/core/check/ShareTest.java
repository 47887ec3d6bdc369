package org.stepwell.core.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.CsvFileSource;

class ShareTest {
    /** Newcombe 1998, Statistics in Medicine 17:857, Table I, method 3. */
    @ParameterizedTest
    @CsvSource({"81,263,.2553,.3662", "15,148,.0624,.1605", "0,20,0,.1611", "1,29,.0061,.1718"})
    void agreesWithThePublishedTable(int hits, int of, double low, double high) {
        assertThat(new Share(hits, of).low95()).isCloseTo(low, within(5e-5));
        assertThat(new Share(hits, of).high95()).isCloseTo(high, within(5e-5));
    }

    /** Source: the README beside the file. */
    @ParameterizedTest
    @CsvFileSource(resources = "/reference/wilson.csv", numLinesToSkip = 1)
    void agreesWithR(int hits, int of, double low, double high) {
        assertThat(new Share(hits, of).low95()).isCloseTo(low, within(1e-9));
        assertThat(new Share(hits, of).high95()).isCloseTo(high, within(1e-9));
    }

    @Test
    void saysNothingOfNoneAndRefusesMoreThanAll() {
        assertThat(new Share(0, 0).value()).isNull();
        assertThat(new Share(0, 0).low95()).isNull();
        assertThat(new Share(0, 0).high95()).isNull();
        assertThatThrownBy(() -> new Share(3, 2)).hasMessageContaining("3 of 2");
    }
}
