package org.stepwell.cli;

/** Data that cannot be taken; the message is what the person at the terminal reads. */
final class BadFiles extends RuntimeException {
    BadFiles(String message) {
        super(message);
    }
}
