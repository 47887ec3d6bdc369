/** Does the Table page keep every look, in a real browser, whatever the network and the server do? */
@NullMarked
package org.stepwell.table;

import org.jspecify.annotations.NullMarked;
