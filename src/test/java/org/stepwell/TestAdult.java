package org.stepwell;

import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.platform.security.SignedIn;

/** An adult of whatever district, signed in on the thread of a test. */
public final class TestAdult {
    private TestAdult() {
    }

    /** Signs in as the adult with this sign-in name, without a password. */
    public static SignedIn signIn(JdbcClient jdbc, TransactionTemplate transaction, String signIn) {
        int district = jdbc.sql("select district_id from sign_in where name = :name").param("name", signIn)
                .query(Integer.class).single();
        SignedIn adult = DistrictScope.in(district, () -> transaction.execute(status -> jdbc.sql(
                "select a.adult_id, a.school_id, s.time_zone, a.lead, a.name from adult a join school s"
                        + " using (district_id, school_id) where a.sign_in = :name").param("name", signIn)
                .query((row, n) -> new SignedIn(district, row.getObject(1, UUID.class), row.getObject(2, UUID.class), signIn,
                        row.getString(5), ZoneId.of(row.getString(3)), row.getBoolean(4))).single()));
        SecurityContextHolder.getContext().setAuthentication(
                UsernamePasswordAuthenticationToken.authenticated(adult, null, List.of()));
        return adult;
    }

    /** Nobody is signed in any more. */
    public static void signOut() {
        SecurityContextHolder.clearContext();
    }
}
