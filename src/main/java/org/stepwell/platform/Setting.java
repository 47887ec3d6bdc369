package org.stepwell.platform;

/** Every environment variable the program reads, with its default; {@code deploy/app.env.example} lists the same. */
public enum Setting {
    /** Folder of the embedded store and the secrets; the launcher sets it to {@code .stepwell} in its checkout. */
    STEPWELL_HOME(".stepwell", false),
    /** TCP port of the web server, 0-65535; 0 takes any free one. */
    STEPWELL_PORT("8080", false),
    /** Address the web server listens on. */
    STEPWELL_BIND("127.0.0.1", false),
    /** PEM file with the certificate chain; together with the key it turns https on. */
    STEPWELL_TLS_CERT("", false),
    /** PEM file with the private key of the certificate. */
    STEPWELL_TLS_KEY("", false),
    /** Addresses of a proxy in front, whose word on whom it speaks for is taken; empty when there is none. */
    STEPWELL_PROXY("", false),
    /** JDBC address of an operator's own PostgreSQL 15 or newer; empty runs the embedded one. */
    STEPWELL_DB_URL("", false),
    /** Run-time user of the own PostgreSQL, or its one privileged user when no owner is named. */
    STEPWELL_DB_USER("", false),
    /** Password of that user. */
    STEPWELL_DB_PASSWORD("", true),
    /** User that migrates and owns the tables. */
    STEPWELL_DB_OWNER_USER("", false),
    /** Password of the owner. */
    STEPWELL_DB_OWNER_PASSWORD("", true),
    /** {@code on} loads the sample class into an empty store, {@code off} opens the set-up page instead. */
    STEPWELL_SAMPLE("on", false),
    /** Password of the sample sign-ins; random and printed when empty. */
    STEPWELL_SAMPLE_PASSWORD("", true);

    private final String byDefault;
    private final boolean secret;

    Setting(String byDefault, boolean secret) {
        this.byDefault = byDefault;
        this.secret = secret;
    }

    /** The value taken when the variable is unset or empty; empty when there is none. */
    public String byDefault() {
        return byDefault;
    }

    /** Whether the value may also stand in a file named by the variable with {@code _FILE} appended. */
    public boolean secret() {
        return secret;
    }
}
