package org.stepwell.core.evidence;

import java.util.Set;

/** The tags that change how a look is read. All others are kept and have no effect. */
public final class Tags {
    /** Copied, upset, or left: the look is no evidence. */
    public static final String NOT_VALID = "not_valid";
    /** Took it from a neighbor: the look is no evidence. */
    public static final String COPIED = "copied";
    /** Tried and could not start: step 1, with more weight to the bottom. */
    public static final String NOT_YET = "not_yet";
    /** Good way, slip in the total: the step holds. */
    public static final String WRONG_TOTAL = "wrong_total";
    /** Put it right without being told: the higher step, which is the one recorded, holds. */
    public static final String SELF_CORRECTED = "self_corrected";
    /** Seen by an adult who does not know the class: weighs less. */
    public static final String SUBSTITUTE = "substitute";
    /** Explained by saying it. */
    public static final String SAID = "said";
    /** Explained by showing it. */
    public static final String SHOWED = "showed";
    /** Explained by drawing it. */
    public static final String DREW = "drew";
    /** Explained in the language of the home. */
    public static final String HOME_LANGUAGE = "home_language";

    /** Ways of explaining; each is as good as another. */
    public static final Set<String> EXPLAINING = Set.of(SAID, SHOWED, DREW, HOME_LANGUAGE);

    /** A look with one of these is kept and shown, and is no evidence. */
    public static final Set<String> NO_EVIDENCE = Set.of(NOT_VALID, COPIED);

    private Tags() {}
}
