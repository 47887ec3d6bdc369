package org.stepwell.platform.security;

import java.util.Optional;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * The district that transactions of this thread work for: the one of the adult who is signed in, or one named for work
 * that no adult does, such as signing in or loading the sample. Without either, the database shows no row.
 */
public final class DistrictScope {
    private static final ThreadLocal<Integer> NAMED = new ThreadLocal<>();

    private DistrictScope() {
    }

    /** Runs work for a district and puts back what was there before. */
    public static <T> T in(int districtId, Supplier<T> work) {
        Integer before = NAMED.get();
        NAMED.set(districtId);
        try {
            return work.get();
        } finally {
            if (before == null) {
                NAMED.remove();
            } else {
                NAMED.set(before);
            }
        }
    }

    /** Transactions that each tell the database their district, for work outside the server. */
    public static TransactionTemplate transactions(DataSource dataSource) {
        return new TransactionTemplate(new DistrictTransactions(dataSource));
    }

    /** What is proved to the database: district and, after a slash, the adult; no adult for work that no adult does. */
    static Optional<String> subject() {
        Integer named = NAMED.get();
        return named != null ? Optional.of(named + "/")
                : CurrentAdult.find().map(adult -> adult.districtId() + "/" + adult.adultId());
    }
}
