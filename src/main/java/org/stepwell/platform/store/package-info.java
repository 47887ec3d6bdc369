/**
 * Where do the rows live, and may they be trusted to stay? The embedded PostgreSQL, an operator's own server, the
 * three database roles, the checks for durability, and the data sources. Tables: none of its own. Routes: none.
 */
@NullMarked
package org.stepwell.platform.store;

import org.jspecify.annotations.NullMarked;
