package org.stepwell.privacy;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * An adult who can see a child today.
 *
 * @param name the adult
 * @param interest teacher, co_teacher, aide, specialist or lead
 * @param until last day, where one is set
 * @param reason why the child was shared; only for a specialist
 */
public record Reader(String name, String interest, @Nullable LocalDate until, @Nullable String reason) {}
