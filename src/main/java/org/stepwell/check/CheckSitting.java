package org.stepwell.check;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * How a child sat a check.
 *
 * @param absent was not there and has not made it up
 * @param satOn day of making up; {@code null} = with the class
 * @param accommodation what the child may do, as an action and never a diagnosis; may be empty
 */
public record CheckSitting(boolean absent, @Nullable LocalDate satOn, String accommodation) {
    /** With the class and without anything special. */
    public static final CheckSitting WITH_THE_CLASS = new CheckSitting(false, null, "");
}
