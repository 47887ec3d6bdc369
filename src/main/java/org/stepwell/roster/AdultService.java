package org.stepwell.roster;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.platform.security.AccountService;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.Invitations.Role;

/**
 * The adults of a class: who they are, who is let in, whose access ends. A teacher lets in co-teachers, aides and
 * specialists; a school lead everybody. A class is never left without a teacher.
 */
@Service
public class AdultService {
    /** How long a code is good. */
    public static final Duration HOLDS = Duration.ofDays(14);
    private static final Pattern CODE = Pattern.compile("\\s*(\\d{1,9})\\s*-(.{1,100})", Pattern.DOTALL);
    private static final int LONGEST_NAME = 200;

    private final AdultStore store;
    private final RosterStore roster;
    private final AccountService accounts;
    private final Access access;
    private final CurrentAdult current;
    private final TransactionTemplate transaction;
    private final Clock clock;

    AdultService(AdultStore store, RosterStore roster, AccountService accounts, Access access, CurrentAdult current,
            TransactionTemplate transaction, Clock clock) {
        this.store = store;
        this.roster = roster;
        this.accounts = accounts;
        this.access = access;
        this.current = current;
        this.transaction = transaction;
        this.clock = clock;
    }

    /** Why something about an adult was refused; the screen says it in the reader's language. */
    public enum Refusal {
        /** The class would be left without a teacher. */
        LAST_TEACHER,
        /** Nobody of the school has that sign-in name. */
        NOBODY,
        /** The adult is in the class already. */
        IN_CLASS,
        /** A name is missing, too long, or holds signs that no name has. */
        NAME,
        /** It is over already: used, taken back, or ended by somebody else. */
        OVER
    }

    /** Thrown with the reason; nothing was changed. */
    public static final class Refused extends RuntimeException {
        private static final long serialVersionUID = 1L;
        private final Refusal refusal;

        Refused(Refusal refusal) {
            super(refusal.name());
            this.refusal = refusal;
        }

        /** The reason. */
        public Refusal refusal() {
            return refusal;
        }
    }

    /**
     * A code as it is shown once.
     *
     * @param code to be typed by the one invited
     * @param forName for whom
     * @param lastDay last whole day it is good, at the school
     */
    public record Slip(String code, String forName, Role role, LocalDate lastDay) {}

    /** The adults of a class now, by name. */
    @Transactional(readOnly = true)
    public List<ClassAdult> adults(UUID classId) {
        access.requireClass(classId);
        return store.inClass(classId, current.today());
    }

    /** Roles the signed-in adult may let in and whose access may be ended by the adult; empty for most. */
    @Transactional(readOnly = true)
    public Set<Role> mayInvite(UUID classId) {
        access.requireClass(classId);
        UUID self = current.get().adultId();
        List<Role> roles = store.inClass(classId, current.today()).stream().filter(a -> a.adultId().equals(self))
                .map(ClassAdult::role).toList();
        if (roles.contains(Role.LEAD)) {
            return EnumSet.allOf(Role.class);
        }
        return roles.contains(Role.TEACHER) ? EnumSet.of(Role.CO_TEACHER, Role.AIDE, Role.SPECIALIST)
                : EnumSet.noneOf(Role.class);
    }

    private void require(UUID classId, Role role) {
        if (!mayInvite(classId).contains(role)) {
            throw new NotVisible();
        }
    }

    /** Codes given out for a class and not used yet, oldest first; for those who may give them out. */
    @Transactional(readOnly = true)
    public List<OpenInvitation> open(UUID classId) {
        Set<Role> roles = mayInvite(classId);
        return store.open(classId, clock.instant()).stream().filter(i -> roles.contains(i.role())).toList();
    }

    /**
     * Makes a code for one adult; it is shown now and never again.
     *
     * @throws Refused when the name is no name
     * @throws NotVisible when the signed-in adult may not let such an adult in
     */
    @Transactional
    public Slip invite(UUID classId, Role role, String forName) {
        require(classId, role);
        String name = name(forName);
        SignedIn self = current.get();
        String code = self.districtId() + "-" + AccountService.randomPassword();
        Instant until = clock.instant().plus(HOLDS);
        AdultStore.Place school = store.schoolOf(classId);
        store.invite(self.districtId(), school.schoolId(), role == Role.LEAD ? null : classId, role, name, hash(code),
                self.adultId(), until);
        return new Slip(code, name, role, LocalDate.ofInstant(until, ZoneId.of(school.zone())).minusDays(1));
    }

    private static String name(String text) {
        try {
            return EntryFault.name("name", text, LONGEST_NAME);
        } catch (EntryFault.Found wrong) {
            throw new Refused(Refusal.NAME);
        }
    }

    /** Takes a code back; from now on it opens nothing. */
    @Transactional
    public void revoke(UUID classId, UUID invitationId) {
        OpenInvitation one = open(classId).stream().filter(i -> i.invitationId().equals(invitationId)).findFirst()
                .orElseThrow(() -> new Refused(Refusal.OVER));
        if (!store.revoke(one.invitationId(), current.get().adultId(), clock.instant())) {
            throw new Refused(Refusal.OVER);
        }
    }

    /** Lets an adult of the school, who signs in already, into the class as well. */
    @Transactional
    public void addKnown(UUID classId, String signIn, Role role) {
        require(classId, role);
        if (role == Role.LEAD) {
            throw new NotVisible();
        }
        UUID adult = store.atSchool(store.schoolOf(classId).schoolId(), signIn)
                .orElseThrow(() -> new Refused(Refusal.NOBODY));
        if (store.inClass(classId, current.today()).stream().anyMatch(a -> a.adultId().equals(adult))) {
            throw new Refused(Refusal.IN_CLASS);
        }
        roster.addClassAdult(current.get().districtId(), classId, adult, AdultStore.code(role), current.today());
    }

    /**
     * Ends the access of an adult to the class at once, with what was shared of its children, and the adult's open
     * sessions. Everybody may end the own one.
     *
     * @throws Refused when that would leave the class without a teacher
     */
    @Transactional
    public void end(UUID classId, UUID adultId) {
        ClassAdult adult = adults(classId).stream().filter(a -> a.adultId().equals(adultId) && a.role() != Role.LEAD)
                .findFirst().orElseThrow(() -> new Refused(Refusal.OVER));
        if (!adultId.equals(current.get().adultId())) {
            require(classId, adult.role());
        }
        List<UUID> teachers = store.lockTeachers(classId, current.today());
        if (teachers.contains(adultId) && teachers.size() == 1) {
            throw new Refused(Refusal.LAST_TEACHER);
        }
        Instant now = clock.instant();
        if (!store.end(classId, adultId, current.today(), now)) {
            throw new Refused(Refusal.OVER);
        }
        access.endGrants(adultId, classId, now);
        accounts.endSessions(current.get().districtId(), adultId);
    }

    /**
     * Makes the account that a code stands for; nobody is signed in.
     *
     * @return {@code false} when the code does not hold: unknown, used, taken back, or too old
     * @throws EntryFault.Found naming the field that cannot be taken; the code stays good
     */
    boolean accept(String code, String name, String signIn, String password) {
        Matcher parts = CODE.matcher(code);
        if (!parts.matches()) {
            return false;
        }
        int district = Integer.parseInt(parts.group(1));
        String hash = hash(code);
        try {
            return Objects.requireNonNull(DistrictScope.in(district, () -> transaction.execute(status ->
                    store.take(hash, clock.instant()).map(held -> {
                        make(district, held, name, signIn, password);
                        return true;
                    }).orElse(false))));
        } catch (DuplicateKeyException taken) {
            throw new EntryFault.Found("username", "taken");
        }
    }

    private void make(int district, AdultStore.Held held, String name, String signIn, String password) {
        String shown = EntryFault.name("name", name, LONGEST_NAME);
        String own = EntryFault.signIn("username", signIn);
        if (accounts.taken(own)) {
            throw new EntryFault.Found("username", "taken");
        }
        EntryFault.password("chosen", password, own, held.school());
        UUID adult = UUID.randomUUID();
        roster.addAdult(district, adult, held.schoolId(), own, shown, held.role() == Role.LEAD);
        @Nullable UUID room = held.classId();
        if (room != null) {
            roster.addClassAdult(district, room, adult, AdultStore.code(held.role()),
                    LocalDate.ofInstant(clock.instant(), ZoneId.of(held.zone())));
        }
        accounts.setPassword(district, adult, password);
        store.used(held.invitationId(), adult, clock.instant());
    }

    /** How a code is kept. It is random and long, so a plain hash does not give it away. */
    private static String hash(String code) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256")
                    .digest(SetUpCode.bare(code).getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException never) {
            throw new IllegalStateException(never);
        }
    }
}
