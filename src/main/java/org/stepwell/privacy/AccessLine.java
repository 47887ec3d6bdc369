package org.stepwell.privacy;

import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/**
 * A line of the record of access, as it is shown and goes out.
 *
 * @param seq number in the record of the district, from 1
 * @param at when, by the school's clock
 * @param adult name of who asked
 * @param what code of {@link Seen}
 * @param given whether it was given; otherwise denied
 * @param party for whom it was made: staff or family
 * @param interest part the adult had in the child then; none when denied
 * @param reason why the child was shared, where it rested on a grant that is still known
 * @param digest digest of the line, in hex
 */
public record AccessLine(long seq, OffsetDateTime at, String adult, String what, boolean given, String party,
        String interest, @Nullable String reason, String digest) {}
