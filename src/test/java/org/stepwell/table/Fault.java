package org.stepwell.table;

/**
 * What a request meets on its way.
 *
 * @param at share of the bytes, in [0, 1), after which a cut falls
 * @param strike what happens at the worst moment, such as the death of the server; nothing for most
 */
record Fault(Kind kind, double at, Runnable strike) {
    /** The kinds, by where they spoil an exchange. */
    enum Kind {
        /** The connection ends before the server hears anything. */
        CUT_BEFORE,
        /** The connection ends within the request. */
        CUT_DURING,
        /** The server has answered, and so has kept; the answer never arrives. */
        LOST_AFTER_COMMIT,
        /** The answer ends within. */
        TRUNCATED,
        /** Nothing comes back until the proxy lets go, and then the connection ends. */
        HANG,
        /** Everything arrives, but only when the proxy lets go. */
        LATE,
        STATUS_500(500),
        STATUS_503(503),
        STATUS_401(401),
        STATUS_403(403),
        STATUS_413(413),
        /** A gateway's page in place of an answer, with status 200. */
        PORTAL;

        private final int status;

        Kind() {
            this(0);
        }

        Kind(int status) {
            this.status = status;
        }

        /** HTTP status for those that answer with one, else 0. */
        int status() {
            return status;
        }
    }

    static Fault of(Kind kind) {
        return new Fault(kind, 0.5, () -> { });
    }

    static Fault of(Kind kind, double at) {
        return new Fault(kind, at, () -> { });
    }

    static Fault of(Kind kind, Runnable strike) {
        return new Fault(kind, 0.5, strike);
    }
}
