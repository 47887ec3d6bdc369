package org.stepwell.core.tier;

import org.jspecify.annotations.Nullable;

/**
 * So many children in the same place that the lesson comes first. It stands above the suggestions and hides none.
 *
 * @param skill the skill on which they are below the expected step; {@code null}: they are suggested for more help
 * @param children how many
 * @param of out of how many that were seen
 */
public record ClassDip(@Nullable String skill, int children, int of) {}
