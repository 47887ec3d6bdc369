package org.stepwell.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Screens;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.RosterService;

/** In districts of their own, in the context the screens share. */
class PlanTemplateServiceTest extends Screens {
    @Autowired
    private RosterService roster;
    @Autowired
    private PlanService plans;
    @Autowired
    private PlanTemplateService templates;
    @Autowired
    private CurrentAdult current;
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;

    private UUID saved(String name) {
        UUID child = roster.addChild(roster.classes().getFirst().classId(), null, "Will", "Lund");
        UUID plan = plans.start(child, true, new PlanTerms(today(), "T05", 2, 4, 80, today().plusDays(50), "Ms. Ruiz", 4, 20,
                today().plusDays(28), "the child will count sticks"));
        return templates.save(child, plan, name, "aide");
    }

    @Test
    void keepsTheFrameAndNeitherChildNorAdult() {
        signInToAnEmptyClass();
        UUID id = saved(" Sticks ");
        assertThat(templates.templates()).singleElement().isEqualTo(new PlanTemplate(id, 1, "Sticks", true, "T05", 4, 80, 8,
                "aide", 4, 20, 4, "the child will count sticks"));
        assertThatThrownBy(() -> saved("sticks")).isInstanceOf(Refused.class).hasMessageContaining("sticks");
        assertThatThrownBy(() -> saved("For Will")).isInstanceOf(Refused.class).hasMessageContaining("Will");
        assertThatThrownBy(() -> saved(" ")).isInstanceOf(Refused.class);
        assertThat(templates.templates()).hasSize(1);
    }

    @Test
    void isRenamedAndRetiredWithoutTwoAdultsPassingEachOther() {
        signInToAnEmptyClass();
        UUID id = saved("Sticks");
        templates.rename(id, 1, "Sticks and tens");
        assertThat(templates.templates()).extracting(PlanTemplate::name).containsExactly("Sticks and tens");
        assertThatThrownBy(() -> templates.retire(id, 1)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> templates.rename(id, 2, "Tens for Will")).isInstanceOf(Refused.class);
        templates.retire(id, 2);
        assertThat(templates.templates()).isEmpty();
        assertThatThrownBy(() -> templates.rename(id, 3, "Back")).isInstanceOf(NotVisible.class);
        int district = current.get().districtId();
        Integer kept = DistrictScope.in(district, () -> transaction.execute(status -> jdbc.sql(
                "select count(*) from plan_template").query(Integer.class).single()));
        assertThat(kept).as("all versions stay").isEqualTo(3);
        assertThatThrownBy(() -> DistrictScope.in(district, () -> transaction.execute(status -> jdbc.sql(
                "update plan_template set retired = false").update()))).isInstanceOf(DataAccessException.class);
    }

    @Test
    void anotherSchoolAndWhoWritesNoPlansSeeNone() {
        signInToAnEmptyClass();
        UUID id = saved("Sticks");
        signInToAnEmptyClass();
        assertThat(templates.templates()).isEmpty();
        assertThatThrownBy(() -> templates.retire(id, 1)).isInstanceOf(NotVisible.class);
        signIn("specialist@sample");
        assertThat(templates.templates()).isEmpty();
        assertThatThrownBy(() -> templates.rename(id, 1, "Mine")).isInstanceOf(NotVisible.class);
    }
}
