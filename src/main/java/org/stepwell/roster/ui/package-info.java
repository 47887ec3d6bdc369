/** Which class is looked at: the choice every screen of a class begins with. */
@NullMarked
package org.stepwell.roster.ui;

import org.jspecify.annotations.NullMarked;
