package org.stepwell.sample;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.stereotype.Service;
import org.stepwell.platform.store.OpenStore;
import org.stepwell.platform.store.OwnerConnections;

/**
 * Takes the sample class out without trace: its district with all that belongs to it in every table, its sign-ins too.
 * Districts of real schools are not touched. It is not put in again by itself.
 */
@Service
public class SampleRemoval {
    private final SampleStore store;

    @Autowired
    SampleRemoval(OwnerConnections connections) {
        this.store = new SampleStore(connections);
    }

    /** For a single command, beside a running server or without one. */
    public static SampleRemoval over(OpenStore store) {
        return new SampleRemoval(store.ownerConnections());
    }

    /** Whether the store has tables; without them nothing else here works. */
    public boolean ready() {
        return store.made();
    }

    /** Whether the sample is in the store. */
    public boolean there() {
        return store.there();
    }

    /** Whether it was taken out of this store. */
    boolean removedBefore() {
        return store.removedBefore();
    }

    /**
     * Removes the sample; without one nothing happens.
     *
     * @return how many rows were removed
     */
    public int remove() {
        return store.there() ? store.remove() : 0;
    }
}
