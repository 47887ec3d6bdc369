/**
 * What did adults see? Looks, stored once each. Table observation; routes /api/observations, /api/children.
 */
@NullMarked
package org.stepwell.observation;

import org.jspecify.annotations.NullMarked;
