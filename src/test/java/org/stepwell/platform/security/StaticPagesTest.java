package org.stepwell.platform.security;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.stepwell.Application;
import org.stepwell.TestDatabase;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = "STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests")
@Import(TestDatabase.InSpring.class)
class StaticPagesTest {
    private final HttpClient http = HttpClient.newHttpClient();

    @LocalServerPort
    private int port;

    private HttpResponse<String> get(String path, String... headers) throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://localhost:" + port + path));
        return http.send(headers.length == 0 ? request.build() : request.headers(headers).build(),
                BodyHandlers.ofString());
    }

    /** RFC 9111, 5.2.2.4: no-cache = keep, but ask before each use; RFC 9110, 13.1.2: a fitting tag answers 304. */
    @ParameterizedTest
    @ValueSource(strings = {"/table/", "/table/table.css", "/table/js/main.js", "/table/worker.js",
        "/look/stepwell.css", "/look/icons/cubes.svg", "/sign-in/sign-in.css", "/sign-in/entry.js", "/login",
        "/set-up"})
    void isKeptButAskedForBeforeEachUse(String path) throws Exception {
        HttpResponse<String> first = get(path);
        assertThat(first.statusCode()).isEqualTo(200);
        assertThat(first.headers().allValues("cache-control")).containsExactly("no-cache");
        assertThat(first.headers().firstValue("expires")).isEmpty();
        assertThat(first.headers().firstValue("last-modified")).as("every file of a jar bears the same").isEmpty();
        String tag = first.headers().firstValue("etag").orElseThrow();
        HttpResponse<String> again = get(path, "If-None-Match", tag);
        assertThat(again.statusCode()).isEqualTo(304);
        assertThat(again.body()).isEmpty();
        assertThat(get(path, "If-None-Match", "W/\"another\"").body()).isEqualTo(first.body());
        assertThat(first.headers().firstValue("content-security-policy").orElse("")).contains("script-src 'self';");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/api/children", "/login/set-up", "/"})
    void whatIsAnsweredForOneReaderIsNeverKept(String path) throws Exception {
        assertThat(get(path).headers().firstValue("cache-control").orElse("")).contains("no-store");
    }
}
