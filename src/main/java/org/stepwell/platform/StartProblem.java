package org.stepwell.platform;

/**
 * Something outside the program stands in the way of a start. The message is for the person at the terminal: it says
 * what is wrong and what to change, and is printed without a stack trace.
 */
public final class StartProblem extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** @param message what is wrong and how to mend it, whole sentences */
    public StartProblem(String message) {
        super(message);
    }

    /**
     * @param message what is wrong and how to mend it, whole sentences
     * @param cause what was thrown below
     */
    public StartProblem(String message, Throwable cause) {
        super(message, cause);
    }
}
