package org.stepwell.conference;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A talk with the family of a child.
 *
 * @param talkId made where it was written
 * @param childId the child
 * @param on day of the talk
 * @param said what the family said; may be empty
 * @param agreed what was agreed; may be empty
 * @param againOn day on which to look at what was agreed; {@code null} when there is none, or it is done
 * @param steps how often it was moved or done since
 * @param by name of the adult who wrote it down
 */
public record FamilyTalk(UUID talkId, UUID childId, LocalDate on, String said, String agreed,
        @Nullable LocalDate againOn, int steps, String by) {}
