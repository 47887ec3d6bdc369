/** What every feature stands on: settings, clock, start and stop, security, the shell and its shared parts. */
@NullMarked
package org.stepwell.platform;

import org.jspecify.annotations.NullMarked;
