package org.stepwell.review.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Anchor;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.test.context.TestPropertySource;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Screens;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.observation.ObservationService;
import org.stepwell.platform.security.DistrictScope;

/** Looks that arrive after their adult lost the class are not only stored: Today says that they wait, and where. */
@TestPropertySource(properties = "stepwell.test=late-looks")
@DirtiesContext
class LateLooksTest extends Screens {
    @Autowired
    private ObservationService observations;
    @Autowired
    private DataSource dataSource;
    @Autowired
    private TransactionTemplate transaction;

    @Test
    void todayLeadsToLooksThatWaitForAWordUntilEachHasOne() {
        signIn("coteacher@sample");
        DistrictScope.in(1, () -> transaction.execute(s -> JdbcClient.create(dataSource).sql("update class_adult set ends_on"
                + " = date '2026-05-10' where adult_id = (select adult_id from adult where sign_in = 'coteacher@sample')")
                .update()));
        List<Look> late = Stream.of("17", "18").map(LateLooksTest::lookAt).toList();
        assertThat(observations.record(late, true)).extracting(ObservationService.Taken::outcome)
                .containsOnly(ObservationService.Outcome.STORED);
        signIn("teacher@sample");
        TodayView today = fresh(TodayView.class);
        assertThat(text(today)).contains("2 looks by adults without this class wait for your word and do not count yet.");
        assertThat(below(today).filter(Anchor.class::isInstance).map(a -> ((Anchor) a).getHref())).contains("tablets");
        UI.getCurrent().setLocale(Locale.forLanguageTag("es-US"));
        assertThat(text(fresh(TodayView.class))).contains("2 observaciones", "Aceptarlas o dejarlas fuera");
        UI.getCurrent().setLocale(Locale.US);
        UI.getCurrent().navigate("tablets");
        press((Component) getCurrentView(), "Let it count");
        assertThat(text(fresh(TodayView.class))).contains("1 look by an adult without this class");
        UI.getCurrent().navigate("tablets");
        press((Component) getCurrentView(), "Leave it out");
        assertThat(text(fresh(TodayView.class))).doesNotContain("without this class", "arrived late");
    }

    private static Look lookAt(String task) {
        return new Look(UUID.randomUUID(), OffsetDateTime.parse("2026-05-08T09:00:00-05:00"), "q0605", "T05", task, 3,
                Help.NONE, Kind.TABLE, "coteacher@sample", Set.of(), null, null, false, null);
    }
}
