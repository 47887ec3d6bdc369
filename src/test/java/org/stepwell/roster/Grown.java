package org.stepwell.roster;

import java.time.Clock;
import java.util.UUID;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stepwell.TestAdult;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.roster.Invitations.Invitation;
import org.stepwell.roster.Invitations.Role;

/** A school of its own for one test, and its adults acting on the test's thread. */
public final class Grown {
    private final DataSource dataSource;
    private final Clock clock;
    private final String school = "s" + UUID.randomUUID().toString().substring(0, 8);
    private boolean founded;

    public Grown(DataSource dataSource, Clock clock) {
        this.dataSource = dataSource;
        this.clock = clock;
    }

    /** Name of the school. */
    public String school() {
        return school;
    }

    /** Sign-in name of somebody at the school. */
    public String in(String who) {
        return who + "@" + school;
    }

    /** Lets somebody in from the terminal; the first brings the school along. */
    public Grown terminal(String who, Role role, @Nullable String className) {
        new Invitations(dataSource, clock).add(new Invitation(in(who), who, role, className, className != null, school,
                founded ? null : "America/Chicago"));
        founded = true;
        return this;
    }

    /** From now on this thread works as that adult. */
    public SignedIn as(String who) {
        return TestAdult.signIn(JdbcClient.create(dataSource), DistrictScope.transactions(dataSource), in(who));
    }
}
