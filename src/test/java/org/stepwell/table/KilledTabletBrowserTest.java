package org.stepwell.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.stepwell.table.FaultyDay.TEACHER;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The browser of a tablet ends without any order, as when its battery is empty, and starts again on what it kept. */
class KilledTabletBrowserTest extends OnAFaultyDay {
    @TempDir
    private Path folder;

    private Tablet open() {
        Tablet tablet = Tablet.withStorage(day.playwright(), folder, day.proxy().address(), promises);
        tablet.signIn(TEACHER);
        tablet.openVisit();
        return tablet;
    }

    @Test
    void everythingCalledSavedOutlivesTheDeathOfTheBrowser() {
        Tablet tablet = open();
        for (int death = 0; death < 3; death++) {
            tablet.save("q0603", 3);
            tablet.tap("q0607", 1 + death);
            Tablet.kill(folder);
            tablet = open();
            saysNoMoreThanIsTrue(tablet);
        }
        endsWell(tablet);
    }

    /**
     * Chromium empties a database that it finds with two unfinished writes on disk (of any two stores: each names the
     * database among its locks, and opening takes every lock for itself alone). So the page never has two under way.
     */
    @Test
    void aLookOutlivesADeathWhileThePageWritesTwoOtherThings() {
        Tablet tablet = open();
        day.proxy().goAway();
        tablet.save("q0603", 3);
        tablet.page().evaluate("""
                async () => {
                  const { answer, write } = await import('/table/js/store.js');
                  window.puts = 0;
                  const endless = (name) => write(name, async (store) => {
                    for (;;) {
                      const key = `test ${name}`;
                      await answer(store.put(store.keyPath ? { [store.keyPath]: key } : { key }, store.keyPath ? undefined : key));
                      window.puts += 1;
                    }
                  });
                  endless('page');
                  endless('keys');
                }""");
        tablet.until(() -> (boolean) tablet.page().evaluate("() => window.puts > 200"));
        Tablet.kill(folder);
        day.proxy().heal();
        Tablet again = open();
        assertThat(again.waiting()).isEqualTo(1);
        saysNoMoreThanIsTrue(again);
        endsWell(again);
    }
}
