package org.stepwell.records;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.platform.store.OwnerConnections;
import org.stepwell.privacy.ErasedIds;
import org.stepwell.privacy.NotVisible;
import org.stepwell.records.Erasure.Why;

/**
 * How long the school keeps what after a child has left. Nothing goes by itself: a lead sees what is over and says so.
 * The clock starts at the last day in any class of the district; which periods the law asks for differs from state to
 * state and is for the school to know.
 */
@Service
public class RetentionService {
    private static final int MOST_MONTHS = 1200;
    private static final int MOST_RUNS = 20;

    private final RetentionStore store;
    private final ErasureStore eraser;
    private final Erasure erasure;
    private final TransactionTemplate transaction;
    private final CurrentAdult current;

    RetentionService(RetentionStore store, OwnerConnections connections, ErasedIds ids,
            TransactionTemplate transaction, CurrentAdult current) {
        this.store = store;
        this.eraser = new ErasureStore(connections);
        this.erasure = new Erasure(connections, ids);
        this.transaction = transaction;
        this.current = current;
    }

    /** Whether the signed-in adult sets periods: leads do. */
    public boolean decides() {
        return current.get().lead();
    }

    /**
     * Months by kind; a kind without a period is missing.
     *
     * @throws NotVisible when the adult is no lead
     */
    public Map<RetentionKind, Integer> periods() {
        SignedIn lead = lead();
        return transaction.execute(status -> store.periods(lead.schoolId()));
    }

    /**
     * Sets a period, or takes it away.
     *
     * @param months whole months after the last day, 1 to 1200; {@code null} for none
     * @throws Refused when it is out of range, or the child itself would go before another kind of record
     * @throws NotVisible when the adult is no lead
     */
    public void set(RetentionKind kind, @Nullable Integer months) {
        SignedIn lead = lead();
        if (months != null && (months < 1 || months > MOST_MONTHS)) {
            throw new Refused("retention.months", String.valueOf(MOST_MONTHS));
        }
        transaction.executeWithoutResult(status -> {
            Map<RetentionKind, Integer> periods = store.periods(lead.schoolId());
            if (months == null) {
                periods.remove(kind);
            } else {
                periods.put(kind, months);
            }
            Integer whole = periods.get(RetentionKind.CHILD);
            if (whole != null && periods.values().stream().anyMatch(other -> other > whole)) {
                throw new Refused("retention.child-last");
            }
            store.set(lead.districtId(), lead.schoolId(), kind, months, lead.adultId());
        });
    }

    /**
     * What is over today and would go, those that are held too; changes nothing.
     *
     * @throws NotVisible when the adult is no lead
     */
    public List<RetentionDue> dryRun() {
        SignedIn lead = lead();
        return transaction.execute(status -> store.due(lead.schoolId(), store.periods(lead.schoolId()),
                current.today()));
    }

    /**
     * Erases what the dry run lists of a kind, but nothing that is held.
     *
     * @param typedRows rows of the kind the lead read in the dry run, typed by hand; nothing goes when it is another number
     *                  by now
     * @return rows removed or rewritten
     * @throws Refused when the number is not that of the dry run, or nothing is over
     * @throws NotVisible when the adult is no lead
     */
    public int erase(RetentionKind kind, int typedRows) {
        SignedIn lead = lead();
        List<RetentionDue> due = dryRun().stream().filter(one -> one.kind() == kind && !one.held()).toList();
        int expected = due.stream().mapToInt(RetentionDue::rows).sum();
        if (due.isEmpty()) {
            throw new Refused("retention.nothing");
        }
        if (expected != typedRows) {
            throw new Refused("retention.number", String.valueOf(expected));
        }
        int rows = 0;
        int children = 0;
        for (RetentionDue one : due) {
            ErasureTarget target = erasure.target(lead.districtId(), one.childId()).orElse(null);
            if (target != null) {
                rows += kind == RetentionKind.CHILD ? erasure.erase(target, Why.RETENTION_ENDED, lead.adultId())
                        : eraser.eraseKinds(target, kind.records());
                children++;
            }
        }
        if (children > 0) {
            eraser.ran(lead, kind, children, rows);
        }
        return rows;
    }

    /**
     * The newest twenty runs of the school.
     *
     * @throws NotVisible when the adult is no lead
     */
    public List<RetentionRun> runs() {
        SignedIn lead = lead();
        return transaction.execute(status -> store.runs(lead.schoolId(), lead.zone(), MOST_RUNS));
    }

    private SignedIn lead() {
        SignedIn adult = current.get();
        if (!adult.lead()) {
            throw new NotVisible();
        }
        return adult;
    }
}
