package org.stepwell.tier;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestDatabase;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.WhatIf;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;
import org.stepwell.tier.WhatIfService.Found;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = "STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests")
@Import(TestDatabase.InSpring.class)
class WhatIfServiceTest {
    @Autowired
    private WhatIfService whatIf;
    @Autowired
    private TierService tiers;
    @Autowired
    private RosterService roster;
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;

    private <T> T inStore(java.util.function.Supplier<T> work) {
        return DistrictScope.in(1, () -> transaction.execute(status -> work.get()));
    }

    private UUID as(String signIn) {
        SignedIn adult = inStore(() -> jdbc.sql("select a.adult_id, a.school_id, s.time_zone, a.lead from adult a"
                + " join school s using (district_id, school_id) where a.sign_in = :name").param("name", signIn)
                .query((row, n) -> new SignedIn(1, row.getObject(1, UUID.class), row.getObject(2, UUID.class), signIn,
                        signIn, java.time.ZoneId.of(row.getString(3)), row.getBoolean(4))).single());
        SecurityContextHolder.getContext().setAuthentication(
                UsernamePasswordAuthenticationToken.authenticated(adult, null, List.of()));
        return roster.classes().getFirst().classId();
    }

    private int decisions() {
        return inStore(() -> jdbc.sql("select count(*) from tier_decision").query(Integer.class).single());
    }

    @AfterEach
    void signsOut() {
        SecurityContextHolder.clearContext();
    }

    @Test
    void followsTheRulesOnTheDaysOfTheDecisionsAndChangesNothing() {
        UUID room = as("teacher@sample");
        int before = decisions();
        Found found = whatIf.tried(room, RuleFile.shipped(RuleFile.CONVENTIONAL), false).orElseThrow();
        Set<LocalDate> decided = new TreeSet<>();
        for (ChildRow child : roster.children(room)) {
            tiers.decisions(child.childId()).forEach(line -> decided.add(line.asOf()));
        }
        assertThat(found.days()).containsAll(decided).hasSize(decided.size() + 1);
        assertThat(found.tried().rules()).isEqualTo(RuleFile.CONVENTIONAL);
        assertThat(found.usual().rules()).isEqualTo(RuleFile.DEFAULT);
        assertThat(found.usual().moves()).isNotEmpty();
        assertThat(found.tried().standAlike().of()).isPositive();
        assertThat(decisions()).isEqualTo(before);
    }

    @Test
    void setsWhatWasDecidedBesideEachReview() {
        UUID room = as("teacher@sample");
        Found found = whatIf.tried(room, RuleFile.shipped(RuleFile.DEFAULT), false).orElseThrow();
        for (ChildRow child : roster.children(room)) {
            for (DecisionLine line : tiers.decisions(child.childId())) {
                WhatIf.Line there = found.tried().lines().stream().filter(l -> l.child().equals(child.schoolKey())
                        && l.day().equals(line.asOf())).findFirst().orElseThrow();
                assertThat(there.decided()).isEqualTo(line.to());
                assertThat(there.decidedMove()).isEqualTo(line.to() != line.from());
            }
        }
        assertThat(found.tried().lines()).anyMatch(l -> l.decided() == Tier.SUPPORT && l.decidedMove());
    }

    @Test
    void reviewsEveryWeekWhenAsked() {
        Found found = whatIf.tried(as("teacher@sample"), RuleFile.shipped(RuleFile.DEFAULT), true).orElseThrow();
        List<LocalDate> days = List.copyOf(found.days());
        assertThat(days).hasSizeGreaterThan(5);
        for (int i = 1; i < days.size(); i++) {
            assertThat(days.get(i)).isEqualTo(days.get(i - 1).plusDays(7));
        }
    }

    @Test
    void holdsNoChildThatTheAdultMayNotSee() {
        UUID room = as("specialist@sample");
        Set<String> visible = roster.children(room).stream().map(ChildRow::schoolKey).collect(Collectors.toSet());
        Found found = whatIf.tried(room, RuleFile.shipped(RuleFile.CONVENTIONAL), true).orElseThrow();
        assertThat(visible).hasSizeBetween(1, 10);
        assertThat(found.names().keySet()).isEqualTo(visible);
        assertThat(found.tried().lines()).isNotEmpty().allMatch(line -> visible.contains(line.child()));
    }
}
