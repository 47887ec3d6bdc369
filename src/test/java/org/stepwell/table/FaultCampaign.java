package org.stepwell.table;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.IntConsumer;
import org.stepwell.table.Fault.Kind;
import org.stepwell.table.FaultPlan.Look;
import org.stepwell.table.FaultPlan.Step;

/**
 * Runs a plan of faults at the Table before the real program and checks every promise of the screen against the store:
 * after each fault that it says no more than is true, at the end that all it called saved is there once, in order.
 */
final class FaultCampaign implements AutoCloseable {
    private final FaultyDay day;
    private final Path profile;
    private final Promises promises;
    private final List<String> overstated = new ArrayList<>();
    private Tablet tablet;
    private int struck;

    /** @param profile empty folder for the storage of the tablet's browser */
    FaultCampaign(FaultyDay day, Path profile, Promises promises) {
        this.day = day;
        this.profile = profile;
        this.promises = promises;
        this.tablet = take();
    }

    /**
     * What came of it.
     *
     * @param faults how many struck
     * @param looks how many looks the screen called saved
     * @param overstated sentences of the screen that said more than was true
     */
    record Result(int faults, int looks, Promises.Verdict verdict, List<String> overstated) {
        boolean clean() {
            return verdict.clean() && overstated.isEmpty();
        }
    }

    private Tablet take() {
        Tablet taken = Tablet.withStorage(day.playwright(), profile, day.proxy().address(), promises);
        taken.signIn(FaultyDay.TEACHER);
        taken.openVisit();
        return taken;
    }

    /** @param progress told how many faults have struck so far */
    Result run(FaultPlan plan, IntConsumer progress) {
        tablet.untilKeptForOffline();
        for (Step step : plan.steps()) {
            try {
                step.before().forEach(this::tap);
                strike(step);
                check();
                day.proxy().heal();
                if (step.drains()) {
                    drain();
                }
            } catch (RuntimeException | AssertionError broken) {
                throw new IllegalStateException("seed " + plan.seed() + ", fault " + (struck + 1) + ": " + step, broken);
            }
            struck++;
            progress.accept(struck);
        }
        drain();
        return new Result(struck, promises.savedCount(), promises.against(rows()), List.copyOf(overstated));
    }

    private List<StoredLooks.Row> rows() {
        return day.store().markedWith(promises.mark());
    }

    private void tap(Look look) {
        tablet.save(Tablet.CHILDREN.get(look.child()), look.step());
    }

    private void check() {
        int waiting = tablet.waiting();
        promises.overstated(rows(), waiting).forEach(sentence -> overstated.add("fault " + (struck + 1) + ": " + sentence));
    }

    private void drain() {
        tablet.drain();
        check();
    }

    private void strike(Step step) {
        switch (step.strike()) {
            case NETWORK_GONE -> {
                day.proxy().goAway();
                tablet.putDown();
                step.during().forEach(this::tap);
            }
            case CUT_BEFORE, CUT_DURING, LOST_AFTER_COMMIT, TRUNCATED, HANG, LATE, STATUS_500, STATUS_503, STATUS_401,
                    STATUS_403, PORTAL ->
                sendInto(Fault.of(Kind.valueOf(step.strike().name()), step.at()), Integer.MAX_VALUE, step);
            case STATUS_413 -> sendInto(Fault.of(Kind.STATUS_413), 1, step);
            case TAB_CLOSED -> {
                step.during().forEach(look -> tablet.tap(Tablet.CHILDREN.get(look.child()), look.step()));
                tablet.closeTab();
                tablet.openVisit();
            }
            case RELOADED -> {
                tablet.putDown();
                tablet.openVisit();
            }
            case RELOADED_OFFLINE -> {
                day.proxy().goAway();
                tablet.openVisit();
                step.during().forEach(this::tap);
            }
            case TWO_TABS -> {
                var first = tablet.anotherTab();
                tablet.openVisit();
                step.during().forEach(this::tap);
                first.evaluate("() => window.dispatchEvent(new Event('online'))");
                tablet.putDown();
                first.close();
            }
            case SESSION_LOST -> {
                tablet.loseSession();
                tablet.putDown();
                step.during().forEach(this::tap);
                check();
                tablet.signIn(FaultyDay.TEACHER);
            }
            case OTHER_ADULT -> {
                tablet.signIn(FaultyDay.CO_TEACHER);
                tablet.openVisit();
                step.during().forEach(this::tap);
                check();
                tablet.putDown();
                tablet.until(() -> tablet.countText().startsWith("All on the server"));
                tablet.signIn(FaultyDay.TEACHER);
                tablet.openVisit();
            }
            case BROWSER_KILLED -> {
                step.during().forEach(look -> tablet.tap(Tablet.CHILDREN.get(look.child()), look.step()));
                Tablet.kill(profile);
                tablet = take();
            }
            case POSTGRES_KILLED -> sendInto(Fault.of(Kind.CUT_BEFORE, day.server()::killPostgres), 1, step);
            case SERVER_KILLED -> {
                AtomicBoolean dead = new AtomicBoolean();
                sendInto(Fault.of(step.at() < 0.3 ? Kind.CUT_DURING : Kind.LOST_AFTER_COMMIT, () -> {
                    day.server().kill();
                    dead.set(true);
                }), 1, step);
                tablet.until(dead::get);
                day.startServerAgain();
                tablet.signIn(FaultyDay.TEACHER);
            }
            default -> throw new IllegalStateException(step.strike().name());
        }
    }

    private void sendInto(Fault fault, int posts, Step step) {
        day.proxy().meet(fault, posts);
        tablet.putDown();
        tablet.until(() -> day.proxy().met() > 0 || tablet.countText().equals("All on the server"));
        if (day.proxy().met() == 0) {
            // What was tapped before had gone by itself before the fault was set: another look meets it.
            tap(step.before().getFirst());
            tablet.putDown();
            tablet.until(() -> day.proxy().met() > 0);
        }
        step.during().forEach(this::tap);
    }

    @Override
    public void close() {
        day.proxy().heal();
        tablet.close();
    }
}
