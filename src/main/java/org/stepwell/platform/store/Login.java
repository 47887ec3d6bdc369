package org.stepwell.platform.store;

/**
 * A database user.
 *
 * @param user role name
 * @param password its secret
 */
public record Login(String user, String password) {
    @Override
    public String toString() {
        return user;
    }
}
