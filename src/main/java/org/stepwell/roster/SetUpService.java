package org.stepwell.roster;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.platform.security.AccountService;
import org.stepwell.platform.security.DistrictScope;

/** Makes the first school, class and teacher of an empty store, for whoever holds the code printed at its start. */
@Service
class SetUpService {
    private final RosterStore store;
    private final AccountService accounts;
    private final SetUpCode code;
    private final TransactionTemplate transaction;
    private final Clock clock;

    SetUpService(RosterStore store, AccountService accounts, SetUpCode code, TransactionTemplate transaction,
            Clock clock) {
        this.store = store;
        this.accounts = accounts;
        this.code = code;
        this.transaction = transaction;
        this.clock = clock;
    }

    /**
     * What the page asks for.
     *
     * @param timeZone IANA name such as America/Chicago
     */
    record Wish(String code, String school, String timeZone, String className, String name, String signIn,
            String password) {}

    enum Outcome {
        /** School, class and teacher are there; the code is used up. */
        MADE,
        /** The code is not the one printed. */
        WRONG_CODE,
        /** Somebody can sign in already; there is nothing to set up. */
        DONE_BEFORE
    }

    boolean open() {
        return code.now().isPresent();
    }

    /**
     * Makes all or nothing. Of two at the same time one makes the school, and the other learns that it is there.
     *
     * @throws EntryFault.Found naming the field that cannot be taken
     */
    synchronized Outcome found(Wish wish) {
        if (!open()) {
            return Outcome.DONE_BEFORE;
        }
        if (!code.fits(wish.code())) {
            return Outcome.WRONG_CODE;
        }
        String school = EntryFault.name("school", wish.school(), 200);
        String zone = EntryFault.zone("zone", wish.timeZone());
        String className = EntryFault.name("room", wish.className(), 100);
        String name = EntryFault.name("name", wish.name(), 200);
        String signIn = EntryFault.signIn("username", wish.signIn());
        EntryFault.password("chosen", wish.password(), signIn, school);
        int district = Invitations.SAMPLE_DISTRICT + 1;
        try {
            DistrictScope.in(district, () -> transaction.execute(status -> {
                UUID schoolId = UUID.randomUUID();
                UUID classId = UUID.randomUUID();
                UUID teacher = UUID.randomUUID();
                store.addDistrict(district, school, false);
                store.addSchool(district, schoolId, school, zone);
                store.addClass(district, classId, schoolId, className, "1");
                store.addAdult(district, teacher, schoolId, signIn, name, false);
                store.addClassAdult(district, classId, teacher, "teacher",
                        LocalDate.ofInstant(clock.instant(), ZoneId.of(zone)));
                accounts.setPassword(district, teacher, wish.password());
                return teacher;
            }));
        } catch (DuplicateKeyException madeElsewhere) {
            // Another server on the same store, or the terminal, was faster: the district's key lets one through.
            return Outcome.DONE_BEFORE;
        }
        return Outcome.MADE;
    }
}
