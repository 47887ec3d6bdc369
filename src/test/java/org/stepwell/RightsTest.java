package org.stepwell;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.vaadin.flow.router.RouteConfiguration;
import com.vaadin.flow.server.VaadinServletContext;
import jakarta.servlet.ServletContext;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.aop.support.AopUtils;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.context.ApplicationContext;
import org.springframework.context.annotation.Import;
import org.springframework.stereotype.Service;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.servlet.handler.SimpleUrlHandlerMapping;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.RequestMappingInfoHandlerMapping;
import org.stepwell.privacy.Right;

/** Every service method, route and screen there is, read from the running program, stands in the table of rights. */
@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = "STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests")
@Import(TestDatabase.InSpring.class)
class RightsTest {
    @Autowired
    private ApplicationContext context;
    @Autowired
    private ServletContext servlets;

    /** A method the program offers, and what a row may call it. */
    record Offered(Object bean, Method method) {
        String claim() {
            String name = method.getDeclaringClass().getSimpleName() + "." + method.getName();
            return method.getParameterCount() == 0 && Right.of(name + "()").isPresent() ? name + "()" : name;
        }
    }

    /** Public methods of a class that other packages can call. */
    static Stream<Method> offered(Class<?> type) {
        return Modifier.isPublic(type.getModifiers()) ? Arrays.stream(type.getDeclaredMethods())
                .filter(m -> Modifier.isPublic(m.getModifiers()) && !Modifier.isStatic(m.getModifiers())
                        && !m.isSynthetic()) : Stream.empty();
    }

    static List<Offered> services(ApplicationContext context) {
        return context.getBeansWithAnnotation(Service.class).values().stream()
                .filter(bean -> AopUtils.getTargetClass(bean).getName().startsWith("org.stepwell."))
                .flatMap(bean -> offered(AopUtils.getTargetClass(bean)).map(m -> new Offered(bean, m))).toList();
    }

    static Set<String> routes(ApplicationContext context, ServletContext servlets) {
        Set<String> all = new TreeSet<>();
        context.getBeansOfType(RequestMappingInfoHandlerMapping.class).values().forEach(mapping -> mapping
                .getHandlerMethods().keySet().forEach(info -> all.addAll(named(info))));
        context.getBeansOfType(SimpleUrlHandlerMapping.class).values().forEach(mapping -> mapping.getUrlMap().keySet()
                .forEach(path -> all.add("GET " + path)));
        RouteConfiguration.forRegistry(com.vaadin.flow.server.startup.ApplicationRouteRegistry
                .getInstance(new VaadinServletContext(servlets))).getAvailableRoutes()
                .forEach(route -> all.add(("screen " + route.getTemplate()).strip()));
        return all;
    }

    private static List<String> named(RequestMappingInfo info) {
        List<String> names = new ArrayList<>();
        info.getPatternValues().forEach(path -> {
            if (info.getMethodsCondition().getMethods().isEmpty()) {
                names.add("any " + path);
            }
            info.getMethodsCondition().getMethods().forEach(method -> names.add(method + " " + path));
        });
        return names;
    }

    private static List<String> unlisted(Stream<String> claims) {
        return claims.filter(claim -> Right.of(claim).isEmpty()).distinct().sorted().toList();
    }

    @Test
    void everyServiceMethodIsClaimed() {
        List<Offered> services = services(context);
        assertThat(services).hasSizeGreaterThan(100);
        assertThat(unlisted(services.stream().map(Offered::claim))).isEmpty();
    }

    @Test
    void everyRouteAndScreenIsClaimed() {
        Set<String> routes = routes(context, servlets);
        assertThat(routes).contains("GET /api/children", "screen", "screen plan/:child", "GET /login")
                .hasSizeGreaterThan(40);
        assertThat(unlisted(routes.stream())).isEmpty();
    }

    /** A row that claims what is not there any more is a row nobody minds. */
    @Test
    void everyClaimIsThereAndStandsInOneRow() {
        Set<String> there = Stream.concat(services(context).stream().map(Offered::claim),
                routes(context, servlets).stream()).collect(Collectors.toCollection(TreeSet::new));
        List<String> claims = Arrays.stream(Right.values()).flatMap(right -> right.claims().stream()).toList();
        assertThat(claims).doesNotHaveDuplicates();
        assertThat(claims.stream().filter(claim -> !there.contains(claim)).sorted().toList()).isEmpty();
    }

    @Test
    void stepsWithinAreCalledByNoRouteAndNoScreen() {
        Set<String> within = Set.copyOf(Right.STEP.claims());
        List<String> calls = new ClassFileImporter().withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("org.stepwell").stream()
                .filter(type -> type.getPackageName().endsWith(".ui") || type.getSimpleName().endsWith("Controller"))
                .flatMap(type -> type.getMethodCallsFromSelf().stream())
                .filter(call -> within.contains(call.getTargetOwner().getSimpleName() + "." + call.getName()))
                .map(JavaMethodCall::getDescription).toList();
        assertThat(calls).isEmpty();
    }

    /** A planted service and a planted route nobody listed are found. */
    @Test
    void whatNobodyListedIsFound() throws NoSuchMethodException {
        assertThat(unlisted(offered(Planted.class).map(m -> new Offered(this, m).claim())))
                .containsExactly("Planted.everything");
        RequestMappingInfo planted = RequestMappingInfo.paths(Planted.class.getMethod("everything")
                .getAnnotation(GetMapping.class).value())
                .methods(org.springframework.web.bind.annotation.RequestMethod.GET).build();
        assertThat(unlisted(named(planted).stream())).containsExactly("GET /api/everything");
    }

    /** What somebody might add without thinking. */
    public static class Planted {
        /** All there is. */
        @GetMapping("/api/everything")
        public List<String> everything() {
            return List.of();
        }
    }
}
