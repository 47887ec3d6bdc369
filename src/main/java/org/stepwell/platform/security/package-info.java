/**
 * Who is signed in, how they came in, and for which district a transaction works.
 */
@NullMarked
package org.stepwell.platform.security;

import org.jspecify.annotations.NullMarked;
