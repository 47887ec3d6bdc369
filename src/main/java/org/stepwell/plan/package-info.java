/**
 * Which help is planned for a child, and was it given? Tables plan, plan_phase, plan_session, plan_end, plan_template.
 */
@NullMarked
package org.stepwell.plan;

import org.jspecify.annotations.NullMarked;
