package org.stepwell;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.stepwell.observation.ApiClient;
import org.stepwell.platform.security.SignedIn;

/**
 * Ten thousand requests made from seeds, sent by a signed-in teacher to every route of the API: each is answered without a
 * fault of the server or a header of the sender's making, and no fact is written. The record of access, which notes what
 * was asked in vain, may grow.
 */
class ApiFuzzTest extends InTwoDistricts {
    private static final int REQUESTS = 10_000;
    private static final int AT_ONCE = 4;
    private static final long SEED = 20261127;
    private static final String PASSWORD = "four plain words of ours";

    /** Rows and their digest of each table but those of the record of access, as the teacher's district sees them. */
    private Map<String, String> stored() {
        grown.as("t");
        Map<String, String> all = transaction.execute(t -> {
            Map<String, String> seen = new HashMap<>();
            jdbc.sql("select relname from pg_class where relkind = 'r' and relnamespace = 'public'::regnamespace"
                    + " and relname not like 'access\\_%' and has_table_privilege(oid, 'select')").query(String.class).list()
                    .forEach(table -> seen.put(table, jdbc.sql("select count(*) || ' ' || coalesce(md5(string_agg(r, ''"
                            + " order by r)), '') from (select t::text r from \"" + table + "\" t) rows")
                            .query(String.class).single()));
            return seen;
        });
        TestAdult.signOut();
        return all;
    }

    @Test
    void noRequestBreaksTheServerOrWritesAFact() {
        SignedIn adult = grown.as("t");
        accounts.setPassword(adult.districtId(), adult.adultId(), PASSWORD);
        ApiClient client = new ApiClient(port);
        client.signIn(grown.in("t"), PASSWORD);
        client.get("/login");
        assertThat(client.get("/api/children").statusCode()).isEqualTo(200);
        List<String> routes = RightsTest.routes(context, servlets).stream().filter(r -> r.contains(" /api/")).toList();
        Map<String, String> before = stored();
        assertThat(before).containsKeys("child", "observation");
        Fuzzed all = new Fuzzed(Collections.synchronizedList(new ArrayList<>()), new ConcurrentHashMap<>());
        List<String> known = List.of(shared.schoolKey(), shared.id("classId").toString(), shared.id("checkId").toString(),
                shared.id("reviewId").toString());
        CompletableFuture.allOf(IntStream.range(0, AT_ONCE).mapToObj(n -> CompletableFuture.runAsync(() -> send(client,
                routes, new FuzzedRequests(SEED + n, known), all), Thread::startVirtualThread))
                .toArray(CompletableFuture[]::new)).join();
        assertThat(all.broken()).as("answers %s", all.answers()).isEmpty();
        assertThat(all.answers().values().stream().mapToInt(Integer::intValue).sum()).isEqualTo(REQUESTS);
        assertThat(all.answers().keySet()).as("%s", all.answers()).contains(200, 400, 404).doesNotContain(401);
        assertThat(stored()).isEqualTo(before);
    }

    private record Fuzzed(List<String> broken, Map<Integer, Integer> answers) {}

    private static void send(ApiClient client, List<String> routes, FuzzedRequests requests, Fuzzed all) {
        for (int i = 0; i < REQUESTS / AT_ONCE; i++) {
            String route = requests.any(routes);
            String path = requests.path(route);
            String body = requests.body();
            HttpResponse<String> answer = route.startsWith("GET") ? client.get(path)
                    : route.startsWith("DELETE") ? client.delete(path) : client.post(path, body);
            all.answers().merge(answer.statusCode(), 1, Integer::sum);
            if (answer.statusCode() >= 500 || answer.headers().firstValue("X-Own").isPresent()) {
                all.broken().add(route + " " + path + " " + body + " -> " + answer.statusCode());
            }
        }
    }
}
