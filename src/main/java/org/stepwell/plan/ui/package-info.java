/**
 * The screen on which a plan is written, its sessions logged in two taps, and it is ended.
 */
@NullMarked
package org.stepwell.plan.ui;

import org.jspecify.annotations.NullMarked;
