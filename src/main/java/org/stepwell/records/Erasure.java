package org.stepwell.records;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.platform.store.HomeSecrets;
import org.stepwell.platform.store.OpenStore;
import org.stepwell.platform.store.OwnerConnections;
import org.stepwell.privacy.ErasedIds;

/**
 * Erases a child from every table. The record of access stays whole and names nobody, since the child's key goes; what
 * is left is the proof that it happened. Asks nobody for rights: {@link ErasureService} does, the terminal is trusted.
 */
public final class Erasure {
    private final ErasureStore store;
    private final ErasedIds ids;

    Erasure(OwnerConnections connections, ErasedIds ids) {
        this.store = new ErasureStore(connections);
        this.ids = ids;
    }

    /** For a single command, beside a running server or without one. */
    public static Erasure over(OpenStore store, HomeSecrets secrets) {
        return new Erasure(store.ownerConnections(), new ErasedIds(secrets));
    }

    /** Why a child is erased; kept in the proof. */
    public enum Why {
        /** The family asked. */
        FAMILY_ASKED,
        /** The time the school keeps records is over. */
        RETENTION_ENDED,
        /** The child should never have been entered. */
        ENTERED_WRONGLY,
        /** A law or a court says so. */
        LAW;

        /** Its word in the store and on the command line. */
        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * What erasure would do.
     *
     * @param rows rows by table that go or are rewritten
     * @param name given name
     * @param mentions rows by table that hold the given name as a word and are on others; only a reader can tell whom
     *                 they mean
     */
    public record Preview(Map<String, Integer> rows, String name, Map<String, Integer> mentions) {}

    /** Whether the store has the tables for it. */
    public boolean ready() {
        return store.made();
    }

    /** Every child with this id of a school's own, in whatever district of the store. */
    public List<ErasureTarget> withKey(String schoolKey) {
        return store.withKey(schoolKey);
    }

    Optional<ErasureTarget> target(int districtId, UUID childId) {
        return store.target(districtId, childId);
    }

    /** Counts, and changes nothing. */
    public Preview preview(ErasureTarget target) {
        return new Preview(store.rows(target), target.givenName(), store.mentions(target));
    }

    /**
     * Erases for good.
     *
     * @param by who ordered it, or null at the terminal of the machine
     * @return rows removed; 0 when the child was gone already
     * @throws org.stepwell.core.problem.Refused when a request of the family is open
     */
    public int erase(ErasureTarget target, Why why, @Nullable UUID by) {
        return store.erase(target, ids.digest(target.districtId(), target.schoolKey()), why.code(), by);
    }
}
