/**
 * What did adults see? Looks, stored once each, and what became of those that came too late. Tables observation and
 * waiting_verdict; routes /api/observations, /api/children, and for tablets /api/table/pass and /api/table/passes.
 */
@NullMarked
package org.stepwell.observation;

import org.jspecify.annotations.NullMarked;
