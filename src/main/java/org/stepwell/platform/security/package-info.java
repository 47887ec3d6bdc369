/**
 * Who is signed in, how they came in, which passwords may be chosen, when a session is over, and for which district a
 * transaction works. Tables sign_in, credential, session_end; routes /login, /login/first, /login/password.
 */
@NullMarked
package org.stepwell.platform.security;

import org.jspecify.annotations.NullMarked;
