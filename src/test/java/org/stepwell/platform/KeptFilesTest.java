package org.stepwell.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.stepwell.Application;
import org.stepwell.TestDatabase;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = "STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests")
@Import(TestDatabase.InSpring.class)
class KeptFilesTest {
    @LocalServerPort
    private int port;
    private final HttpClient client = HttpClient.newHttpClient();

    private HttpResponse<byte[]> get(String path) throws IOException, InterruptedException {
        return client.send(HttpRequest.newBuilder(URI.create("http://localhost:" + port + path))
                .header("Accept-Encoding", "gzip").build(), HttpResponse.BodyHandlers.ofByteArray());
    }

    private static String keeping(HttpResponse<byte[]> answer) {
        return String.join("; ", answer.headers().allValues("cache-control"));
    }

    @Test
    void aFileAskedForByItsContentIsKeptAndTravelsCompressed() throws Exception {
        HttpResponse<byte[]> answer = get("/look/views.css?v-c=1234");
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(keeping(answer)).isEqualTo("max-age=31536000, immutable");
        assertThat(answer.headers().allValues("pragma")).isEmpty();
        assertThat(answer.headers().firstValue("content-encoding")).contains("gzip");
        assertThat(answer.headers().firstValue("content-security-policy")).isPresent();
    }

    @Test
    void nothingElseIsKeptUnasked() throws Exception {
        assertThat(keeping(get("/look/views.css"))).doesNotContain("immutable");
        assertThat(keeping(get("/login"))).doesNotContain("immutable");
        HttpResponse<byte[]> missing = get("/look/none.css?v-c=1234");
        assertThat(missing.statusCode()).isEqualTo(404);
        assertThat(keeping(missing)).isEqualTo("no-store");
    }
}
