package org.stepwell.platform.security;

import java.io.Serializable;
import java.security.Principal;
import java.time.ZoneId;
import java.util.UUID;

/**
 * The adult who is signed in.
 *
 * @param districtId district every query of this adult is limited to
 * @param adultId the adult
 * @param schoolId school the adult works at
 * @param signIn name used to sign in, also as observer in files
 * @param name shown beside looks and decisions
 * @param zone the school's time zone; decides what day it is
 * @param lead whether the adult is a school lead
 */
public record SignedIn(int districtId, UUID adultId, UUID schoolId, String signIn, String name, ZoneId zone,
        boolean lead) implements Principal, Serializable {
    @Override
    public String getName() {
        return signIn;
    }
}
