package org.stepwell.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.extension.ExtendWith;

/** A test on the one server, proxy and browser of all such tests; what it taps is told by a mark of its own. */
@ExtendWith(OneFaultyDay.class)
abstract class OnAFaultyDay {
    static FaultyDay day;
    final Promises promises = new Promises();

    @BeforeAll
    static void share(FaultyDay shared) {
        day = shared;
    }

    /** Runs after what a test class itself does at the end. */
    @AfterEach
    void healEverything() {
        day.proxy().heal();
        day.proxy().changeNothing();
    }

    /** What this test has put into the store. */
    final List<StoredLooks.Row> stored() {
        return day.store().markedWith(promises.mark());
    }

    final void keepsItsPromises() {
        Promises.Verdict verdict = promises.against(stored());
        assertThat(verdict.clean()).as(verdict.toString()).isTrue();
    }

    final void saysNoMoreThanIsTrue(Tablet tablet) {
        int waiting = tablet.waiting();
        assertThat(promises.overstated(stored(), waiting)).isEmpty();
    }

    /** Everything sent, the tablet closed: each look that was called saved is there once. */
    final void endsWell(Tablet tablet) {
        day.proxy().heal();
        tablet.drain();
        tablet.close();
        assertThat(promises.savedCount()).isPositive();
        keepsItsPromises();
    }
}
