package org.stepwell.grouping;

import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.platform.security.SignedIn;

/** Puts an adult of the sample class on the thread of a test. */
public final class SampleSignIn {
    private SampleSignIn() {}

    /** Signs in by name, such as {@code teacher@sample}. */
    public static void as(String signIn, JdbcClient jdbc, TransactionTemplate transaction) {
        SignedIn adult = DistrictScope.in(1, () -> transaction.execute(status -> jdbc.sql(
                "select a.adult_id, a.school_id, s.time_zone, a.lead from adult a join school s"
                        + " using (district_id, school_id) where a.sign_in = :name").param("name", signIn)
                .query((row, n) -> new SignedIn(1, row.getObject(1, UUID.class), row.getObject(2, UUID.class), signIn,
                        signIn, ZoneId.of(row.getString(3)), row.getBoolean(4))).single()));
        SecurityContextHolder.getContext().setAuthentication(
                UsernamePasswordAuthenticationToken.authenticated(adult, null, List.of()));
    }
}
