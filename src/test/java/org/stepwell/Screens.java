package org.stepwell;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.ClickEvent;
import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.ComponentUtil;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.dom.Element;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.roster.Invitations;
import org.stepwell.roster.Invitations.Invitation;
import org.stepwell.roster.Invitations.Role;

/** Screens as the server builds them, without a browser, over a real store with the sample class. */
@SpringBootTest(classes = Application.class, properties = "STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests")
@Import(TestDatabase.InSpring.class)
public abstract class Screens extends SpringBrowserlessTest {
    @Autowired
    private DataSource dataSource;
    @Autowired
    private TransactionTemplate transaction;
    @Autowired
    private Clock clock;

    /** Signs an adult in and opens a screen engine for them. */
    protected void signIn(String name) {
        SignedIn adult = adult(name);
        cleanVaadinEnvironment();
        SecurityContextHolder.getContext().setAuthentication(UsernamePasswordAuthenticationToken.authenticated(adult,
                null, List.of(new SimpleGrantedAuthority("ROLE_ADULT"))));
        initVaadinEnvironment();
        UI.getCurrent().setLocale(Locale.US);
    }

    /** Signs in the teacher of a class of their own that nobody has touched yet, in a district of their own. */
    protected void signInToAnEmptyClass() {
        signInToAnEmptyClass("Room 9");
    }

    /** The same with a class of this name. */
    protected void signInToAnEmptyClass(String className) {
        String name = "teacher-" + UUID.randomUUID().toString().substring(0, 8) + "@lake";
        new Invitations(dataSource, clock).add(new Invitation(name, "Ana Ruiz", Role.TEACHER, className, true,
                "Lake " + name, "America/Chicago"));
        signIn(name);
    }

    private SignedIn adult(String name) {
        int district = JdbcClient.create(dataSource).sql("select district_id from sign_in where name = :name")
                .param("name", name).query(Integer.class).single();
        return DistrictScope.in(district, () -> transaction.execute(s -> JdbcClient.create(dataSource).sql("""
                select a.adult_id, a.school_id, a.name, s.time_zone, a.lead
                from adult a join school s using (district_id, school_id) where a.sign_in = :name""")
                .param("name", name).query((row, n) -> new SignedIn(district, row.getObject(1, UUID.class),
                        row.getObject(2, UUID.class), name, row.getString(3), ZoneId.of(row.getString(4)),
                        row.getBoolean(5))).single()));
    }

    /** Today at the sample's school. */
    protected LocalDate today() {
        return LocalDate.now(clock.withZone(ZoneId.of("America/Chicago")));
    }

    @AfterEach
    void signsOut() {
        SecurityContextHolder.clearContext();
    }

    /** A screen drawn afresh, also where it is the one that is open. */
    protected <T extends Component> T fresh(Class<T> screen) {
        navigate(screen);
        UI.getCurrent().refreshCurrentRoute(false);
        return screen.cast(getCurrentView());
    }

    /** Everything a reader could read on it, in order, a blank between the parts. */
    protected static String text(Component component) {
        StringBuilder all = new StringBuilder();
        gather(component.getElement(), all);
        return all.toString().replaceAll("\\s+", " ").strip();
    }

    private static void gather(Element element, StringBuilder all) {
        if (element.isTextNode()) {
            all.append(element.getText());
            return;
        }
        all.append(' ');
        element.getChildren().forEach(child -> gather(child, all));
        all.append(' ');
    }

    /** Every component below it, itself first. */
    protected static Stream<Component> below(Component component) {
        return Stream.concat(Stream.of(component), component.getChildren().flatMap(Screens::below));
    }

    /** The first part of a kind whose text begins so. */
    protected static <T extends Component> T first(Component root, Class<T> kind, String start) {
        return below(root).filter(kind::isInstance).map(kind::cast).filter(c -> text(c).startsWith(start)).findFirst()
                .orElseThrow(() -> new AssertionError("nothing begins with \"" + start + "\" in: " + text(root)));
    }

    /** Presses the first button whose text begins so. */
    protected static void press(Component root, String start) {
        ComponentUtil.fireEvent(first(root, NativeButton.class, start), new ClickEvent<>(root));
    }

    /** Writes into, or chooses in, the field with this label, as a browser would report it. */
    protected static void fill(Component root, String label, String value) {
        Element field = below(root).map(Component::getElement).filter(e -> e.getTag().equals("label")
                && e.getText().equals(label)).findFirst()
                .orElseThrow(() -> new AssertionError("no field \"" + label + "\" in: " + text(root))).getParent();
        Element control = field.getChildren().filter(e -> !e.getTag().equals("label")).findFirst().orElseThrow();
        control.setProperty("value", value);
    }
}
