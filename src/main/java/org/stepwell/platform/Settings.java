package org.stepwell.platform;

import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The environment, read once and checked.
 *
 * @param home folder of the embedded store and the secrets, absolute
 * @param port TCP port of the web server, 0-65535, 0 for any free one
 * @param bind address the web server listens on
 * @param tls certificate and key, or null for plain http
 * @param proxies addresses of a proxy whose word on the address and scheme of a request is taken; nobody else's is
 * @param database the operator's own PostgreSQL, or null for the embedded one
 * @param sample whether an empty store is filled with the sample class
 * @param samplePassword password of the sample sign-ins, or null for a random one
 */
public record Settings(Path home, int port, String bind, @Nullable Tls tls, List<String> proxies,
        @Nullable Database database, boolean sample, @Nullable String samplePassword) {

    /**
     * Files of the web server's identity.
     *
     * @param certificate PEM file with the certificate chain
     * @param key PEM file with the private key
     */
    public record Tls(Path certificate, Path key) {
    }

    /**
     * An operator's own PostgreSQL.
     *
     * @param url JDBC address
     * @param user run-time user, or the one privileged user when {@code ownerUser} is null
     * @param password of {@code user}
     * @param ownerUser user that migrates and owns the tables, or null
     * @param ownerPassword of the owner, or null
     */
    public record Database(String url, String user, String password, @Nullable String ownerUser,
            @Nullable String ownerPassword) {
        @Override
        public String toString() {
            return "Database[" + url + ", " + user + "]";
        }
    }

    /**
     * Reads the settings.
     *
     * @param environment gives the value of a variable by name, null when unset
     * @throws StartProblem when a value cannot be used, naming the variable
     */
    public static Settings from(Function<String, @Nullable String> environment) {
        Reader reader = new Reader(environment);
        return new Settings(Path.of(reader.text(Setting.STEPWELL_HOME)).toAbsolutePath().normalize(), reader.port(),
                reader.address(), reader.tls(), reader.proxies(), reader.database(), reader.onOff(Setting.STEPWELL_SAMPLE),
                reader.orNull(Setting.STEPWELL_SAMPLE_PASSWORD));
    }

    /** {@code https} when there is a certificate, else {@code http}. */
    public String scheme() {
        return tls == null ? "http" : "https";
    }

    /** The same settings in the words of Spring Boot's web server. */
    public Map<String, Object> serverProperties() {
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("server.port", port);
        properties.put("server.address", bind);
        if (tls != null) {
            properties.put("spring.ssl.bundle.pem.web.keystore.certificate", tls.certificate().toUri().toString());
            properties.put("spring.ssl.bundle.pem.web.keystore.private-key", tls.key().toUri().toString());
            properties.put("server.ssl.bundle", "web");
            properties.put("server.servlet.session.cookie.secure", true);
        }
        if (!proxies.isEmpty()) {
            properties.put("server.forward-headers-strategy", "native");
            properties.put("server.tomcat.remoteip.remote-ip-header", "X-Forwarded-For");
            properties.put("server.tomcat.remoteip.protocol-header", "X-Forwarded-Proto");
            properties.put("server.tomcat.remoteip.internal-proxies", proxies.stream()
                    .map(address -> address + (address.contains(":") ? "/128" : "/32")).collect(Collectors.joining(",")));
        }
        return properties;
    }

    @Override
    public String toString() {
        return "Settings[home=" + home + ", " + scheme() + "://" + bind + ":" + port + "]";
    }

    private record Reader(Function<String, @Nullable String> environment) {

        String text(Setting setting) {
            String value = environment.apply(setting.name());
            if (setting.secret()) {
                value = orFromFile(setting, value);
            }
            return value == null || value.isBlank() ? setting.byDefault() : value;
        }

        @Nullable String orNull(Setting setting) {
            String value = text(setting);
            return value.isEmpty() ? null : value;
        }

        private @Nullable String orFromFile(Setting setting, @Nullable String value) {
            String name = setting.name() + "_FILE";
            String file = environment.apply(name);
            if (file == null || file.isBlank()) {
                return value;
            }
            if (value != null && !value.isBlank()) {
                throw new StartProblem("Both " + setting.name() + " and " + name + " are set. Keep one of them.");
            }
            try {
                return Files.readString(Path.of(file)).strip();
            } catch (IOException unreadable) {
                throw new StartProblem(name + " names " + file + ", which cannot be read. Check path and rights.",
                        unreadable);
            }
        }

        int port() {
            String value = text(Setting.STEPWELL_PORT);
            try {
                int port = Integer.parseInt(value.strip());
                if (port >= 0 && port <= 65535) {
                    return port;
                }
            } catch (NumberFormatException notANumber) {
                throw badPort(value);
            }
            throw badPort(value);
        }

        private static StartProblem badPort(String value) {
            return new StartProblem("STEPWELL_PORT is '" + value + "'. Set it to a port from 0 to 65535, like 8080.");
        }

        String address() {
            String value = text(Setting.STEPWELL_BIND).strip();
            try {
                InetAddress.getByName(value);
                return value;
            } catch (UnknownHostException unknown) {
                throw new StartProblem("STEPWELL_BIND is '" + value + "', which is no address of this machine. "
                        + "Set it to 127.0.0.1 for this machine alone or 0.0.0.0 for every network.", unknown);
            }
        }

        boolean onOff(Setting setting) {
            return switch (text(setting).strip()) {
                case "on" -> true;
                case "off" -> false;
                default -> throw new StartProblem(
                        setting + " is '" + text(setting) + "'. Set it to on or off.");
            };
        }

        @Nullable Tls tls() {
            String certificate = orNull(Setting.STEPWELL_TLS_CERT);
            String key = orNull(Setting.STEPWELL_TLS_KEY);
            if (certificate == null && key == null) {
                return null;
            }
            if (certificate == null || key == null) {
                throw new StartProblem("https needs both STEPWELL_TLS_CERT and STEPWELL_TLS_KEY; only one is set.");
            }
            return new Tls(readable(Setting.STEPWELL_TLS_CERT, certificate), readable(Setting.STEPWELL_TLS_KEY, key));
        }

        List<String> proxies() {
            return Stream.of(text(Setting.STEPWELL_PROXY).split(",")).map(String::strip).filter(a -> !a.isEmpty())
                    .map(Reader::literal).toList();
        }

        private static String literal(String address) {
            try {
                return InetAddress.ofLiteral(address).getHostAddress();
            } catch (IllegalArgumentException noAddress) {
                throw new StartProblem("STEPWELL_PROXY holds '" + address + "', which is no address in figures. Set it to"
                        + " that of the proxy, like 127.0.0.1, or leave it empty without one.", noAddress);
            }
        }

        private static Path readable(Setting setting, String file) {
            Path path = Path.of(file).toAbsolutePath();
            if (!Files.isReadable(path)) {
                throw new StartProblem(setting + " names " + path + ", which cannot be read. Check path and rights.");
            }
            return path;
        }

        @Nullable Database database() {
            String url = orNull(Setting.STEPWELL_DB_URL);
            if (url == null) {
                return null;
            }
            if (!url.startsWith("jdbc:postgresql://")) {
                throw new StartProblem("STEPWELL_DB_URL is '" + url
                        + "'. Write it as jdbc:postgresql://HOST:PORT/DATABASE.");
            }
            String user = orNull(Setting.STEPWELL_DB_USER);
            if (user == null) {
                throw new StartProblem("STEPWELL_DB_URL is set but STEPWELL_DB_USER is not. Name the database user.");
            }
            String password = text(Setting.STEPWELL_DB_PASSWORD);
            return new Database(url, user, password, orNull(Setting.STEPWELL_DB_OWNER_USER),
                    orNull(Setting.STEPWELL_DB_OWNER_PASSWORD));
        }
    }
}
