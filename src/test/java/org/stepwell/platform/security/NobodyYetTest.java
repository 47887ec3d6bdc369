package org.stepwell.platform.security;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import org.junit.jupiter.api.Test;
import org.stepwell.TestDatabase;
import org.stepwell.roster.Invitations;
import org.stepwell.roster.Invitations.Invitation;
import org.stepwell.roster.Invitations.Role;

class NobodyYetTest {
    @Test
    void tellsHowTheFirstTeacherGetsInAndThenIsSilent() {
        try (TestDatabase database = TestDatabase.fresh()) {
            NobodyYet notice = new NobodyYet(AccountService.over(database.runTime(), Clock.systemUTC()));
            assertThat(notice.lines()).anySatisfy(line -> assertThat(line).contains("./stepwell adult add"));
            new Invitations(database.runTime(), Clock.systemUTC()).add(
                    new Invitation("ana@hill", "Ana Ruiz", Role.TEACHER, "Room 1", true, "Hill", "America/Chicago"));
            assertThat(notice.lines()).isEmpty();
        }
    }
}
