package org.stepwell;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.stepwell.observation.ApiClient;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Right;
import org.stepwell.privacy.Right.Reach;
import org.stepwell.privacy.Right.Who;

/** Everybody asks every route of the API, with what they may see, what they may not, and what is not there. */
class RoutesWalkTest extends InTwoDistricts {
    private static final String PASSWORD = "four plain words of ours";

    private ApiClient client(Who who) {
        ApiClient client = new ApiClient(port);
        if (who != Who.STRANGER) {
            SignedIn adult = grown.as(NAMES.get(who));
            accounts.setPassword(adult.districtId(), adult.adultId(), PASSWORD);
            client.signIn(grown.in(NAMES.get(who)), PASSWORD);
            TestAdult.signOut();
        }
        client.get("/login");
        return client;
    }

    private static String path(String claim, World world) {
        String path = claim.substring(claim.indexOf(' ') + 1).replace("{child}", world.schoolKey())
                .replace("{id}", world.id(claim.contains("/reviews/") ? "reviewId" : "checkId").toString())
                .replace("{classId}", world.id("classId").toString())
                .replace("{pass}", UUID.randomUUID().toString());
        return switch (path) {
            case "/api/observations" -> path + "?child=" + world.schoolKey();
            case "/api/table" -> path + "?class=" + world.id("classId");
            default -> path;
        };
    }

    private static String asked(ApiClient client, String claim, World world) {
        String body = claim.endsWith("/marks") ? "[{\"child\":\"" + world.schoolKey()
                + "\",\"item\":\"i1\",\"entry\":1,\"seen\":0,\"mark\":\"right\"}]"
                : claim.endsWith("/pass") ? "{\"class\":\"" + world.id("classId") + "\",\"device\":\"" + UUID.randomUUID()
                        + "\"}" : claim.equals("POST /api/observations") ? "[]"
                                : "{\"child\":\"" + world.schoolKey() + "\",\"entry\":1,\"absent\":true}";
        String path = path(claim, world);
        HttpResponse<String> answer = claim.startsWith("GET") ? client.get(path)
                : claim.startsWith("DELETE") ? client.delete(path) : client.post(path, body);
        return answer.statusCode() + " " + answer.body().replaceAll("\"(timestamp|path)\":\"[^\"]*\"", "");
    }

    @Test
    void everyRouteAnswersEverybodyAsTheTableSays() {
        List<String> routes = RightsTest.routes(context, servlets).stream().filter(r -> r.contains(" /api/")).toList();
        assertThat(routes).hasSizeGreaterThan(12);
        List<String> wrong = new ArrayList<>();
        for (Who who : Who.values()) {
            ApiClient client = client(who);
            for (String route : routes) {
                Right right = Right.of(route).orElseThrow();
                if (who == Who.STRANGER) {
                    if (!asked(client, route, shared).startsWith("401")) {
                        wrong.add("a stranger is let in at " + route);
                    }
                    continue;
                }
                boolean listing = right.reach() == Reach.OWN || route.equals("POST /api/observations");
                String absent = asked(client, route, World.nowhere());
                for (World world : hidden(who, right.reach() == Reach.HELD ? Reach.PART : right.reach())) {
                    String hidden = asked(client, route, world);
                    if (!hidden.equals(absent) || !listing && !hidden.startsWith("404")) {
                        wrong.add(who + " " + route + ": " + hidden + " / " + absent);
                    }
                }
                if (right.who().contains(who) && route.startsWith("GET") && !asked(client, route, shared)
                        .startsWith("200")) {
                    wrong.add(who + " may, and cannot: " + route + " " + asked(client, route, shared));
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    /** Screens lead a stranger to the sign-in page and say nothing. */
    @Test
    void everyScreenIsClosedToStrangers() {
        for (String screen : RightsTest.routes(context, servlets).stream().filter(r -> r.startsWith("screen")).toList()) {
            String path = "/" + screen.substring(6).strip().replaceAll(":[a-z]+\\??", "x");
            HttpResponse<String> answer = new ApiClient(port).get(path);
            assertThat(answer.statusCode()).as(path).isIn(302, 401, 403);
        }
    }
}
