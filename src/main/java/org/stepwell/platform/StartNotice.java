package org.stepwell.platform;

import java.util.List;

/** A bean with lines for the person who started the server, printed to stdout below the address once it serves. */
public interface StartNotice {
    /** The lines to print, in order; empty when there is nothing to say. */
    List<String> lines();
}
