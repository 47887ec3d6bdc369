package org.stepwell.observation;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.HttpCookie;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/** A program that signs in and speaks to the API, with nothing but cookies and a header. */
public final class ApiClient {
    private final CookieManager cookies = new CookieManager();
    private final HttpClient http = HttpClient.newBuilder().cookieHandler(cookies).build();
    private final String address;
    private final Map<String, String> headers = new LinkedHashMap<>();

    public ApiClient(int port) {
        this.address = "http://localhost:" + port;
    }

    /** Opens the sign-in page and signs in; gives the answer to the sign-in. */
    public HttpResponse<String> signIn(String name, String password) {
        return form("/login", Map.of("username", name, "password", password));
    }

    /** Opens the sign-in page and sends a form as that page would. */
    public HttpResponse<String> form(String path, Map<String, String> fields) {
        get("/login");
        return send(HttpRequest.newBuilder(URI.create(address + path))
                .header("Content-Type", "application/x-www-form-urlencoded").header("X-XSRF-TOKEN", token())
                .POST(BodyPublishers.ofString(fields.entrySet().stream()
                        .map(field -> field.getKey() + "=" + coded(field.getValue()))
                        .collect(Collectors.joining("&")))).build());
    }

    public HttpResponse<String> get(String path) {
        return send(HttpRequest.newBuilder(URI.create(address + path)).header("Accept", "application/json").build());
    }

    public HttpResponse<String> post(String path, String json) {
        return post(path, json, token());
    }

    public HttpResponse<String> post(String path, String json, String token) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(address + path))
                .header("Content-Type", "application/json").POST(BodyPublishers.ofString(json));
        return send(token.isEmpty() ? request.build() : request.header("X-XSRF-TOKEN", token).build());
    }

    public HttpResponse<String> delete(String path) {
        return send(HttpRequest.newBuilder(URI.create(address + path)).header("X-XSRF-TOKEN", token()).DELETE().build());
    }

    /** Sends this header along from now on. */
    public ApiClient with(String name, String value) {
        headers.put(name, value);
        return this;
    }

    /** Chooses the language as a browser keeps it. */
    public void chooses(String language) {
        HttpCookie cookie = new HttpCookie("stepwell-language", language);
        cookie.setPath("/");
        cookie.setVersion(0);
        cookies.getCookieStore().add(URI.create(address), cookie);
    }

    /** Everything a browser would send along by itself. */
    public String cookies() {
        return cookies.getCookieStore().getCookies().stream().map(c -> c.getName() + "=" + c.getValue())
                .collect(Collectors.joining("; "));
    }

    public String token() {
        return cookies.getCookieStore().getCookies().stream().filter(c -> c.getName().equals("XSRF-TOKEN"))
                .map(HttpCookie::getValue).findFirst().orElse("");
    }

    private HttpResponse<String> send(HttpRequest request) {
        try {
            HttpRequest.Builder whole = HttpRequest.newBuilder(request, (name, value) -> true);
            headers.forEach(whole::setHeader);
            return http.send(whole.build(), BodyHandlers.ofString());
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
    }

    private static String coded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
