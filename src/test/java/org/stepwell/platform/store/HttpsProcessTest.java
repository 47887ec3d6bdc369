package org.stepwell.platform.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpClient;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.util.Base64;
import java.util.Map;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HttpsProcessTest {
    private static final char[] PASSWORD = "only-here".toCharArray();

    @TempDir
    Path folder;

    private KeyStore identity() throws Exception {
        Path file = folder.resolve("identity.p12");
        Process keytool = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "keytool").toString(),
                "-genkeypair", "-alias", "web", "-keyalg", "EC", "-dname", "CN=localhost", "-ext", "SAN=dns:localhost",
                "-validity", "2", "-storetype", "PKCS12", "-keystore", file.toString(), "-storepass",
                new String(PASSWORD)).inheritIO().start();
        assertThat(keytool.waitFor()).isZero();
        return KeyStore.getInstance(file.toFile(), PASSWORD);
    }

    private Path pem(String name, String kind, byte[] content) throws Exception {
        String body = Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(content);
        return Files.writeString(folder.resolve(name),
                "-----BEGIN " + kind + "-----\n" + body + "\n-----END " + kind + "-----\n");
    }

    @Test
    void servesHttpsWithACertificateAndItsKey() throws Exception {
        KeyStore identity = identity();
        Path certificate = pem("web.crt", "CERTIFICATE", identity.getCertificate("web").getEncoded());
        Path key = pem("web.key", "PRIVATE KEY", identity.getKey("web", PASSWORD).getEncoded());
        TrustManagerFactory trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
        KeyStore trusted = KeyStore.getInstance("PKCS12");
        trusted.load(null, null);
        trusted.setCertificateEntry("web", identity.getCertificate("web"));
        trust.init(trusted);
        SSLContext tls = SSLContext.getInstance("TLS");
        tls.init(null, trust.getTrustManagers(), null);
        try (StepwellProcess server = StepwellProcess.serving(folder.resolve("home"), Map.of("STEPWELL_TLS_CERT",
                certificate.toString(), "STEPWELL_TLS_KEY", key.toString()))) {
            assertThat(server.address()).startsWith("https://localhost:");
            HttpClient client = HttpClient.newBuilder().sslContext(tls).build();
            assertThat(server.status(client, "/actuator/health/readiness")).isEqualTo(200);
        }
    }

    @Test
    void refusesACertificateWithoutAKey() throws Exception {
        StepwellProcess refused = StepwellProcess.launch(folder.resolve("home"),
                Map.of("STEPWELL_TLS_CERT", folder.resolve("web.crt").toString()));
        assertThat(refused.exit()).isEqualTo(1);
        assertThat(refused.errors()).contains("https needs both STEPWELL_TLS_CERT and STEPWELL_TLS_KEY")
                .doesNotContain("\tat ");
    }
}
