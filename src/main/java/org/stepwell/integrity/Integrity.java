package org.stepwell.integrity;

import java.util.List;
import org.stepwell.platform.store.OpenStore;

/**
 * Checks a store as a whole, beside a running server or without one. Numbers derived from looks are computed when they
 * are read and never stored, so there are none to compare.
 */
public final class Integrity {
    private final IntegrityStore store;

    private Integrity(IntegrityStore store) {
        this.store = store;
    }

    /** Over an open store. */
    public static Integrity over(OpenStore store) {
        return new Integrity(new IntegrityStore(store.ownerConnections()));
    }

    /**
     * One question and what was found.
     *
     * @param question what should hold
     * @param looked how many rows it was asked of
     * @param wrong names of rows for which it does not hold, at most twenty; ids, never names of children
     */
    public record Answer(String question, long looked, List<String> wrong) {
        /** Copies the list. */
        public Answer {
            wrong = List.copyOf(wrong);
        }
    }

    /** The answers, all from one moment of the store. */
    public List<Answer> check() {
        return store.answers();
    }
}
