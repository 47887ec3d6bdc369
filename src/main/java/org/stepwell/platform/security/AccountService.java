package org.stepwell.platform.security;

import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import javax.sql.DataSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

/** Checks and sets passwords. */
@Service
public class AccountService {
    private static final Duration ONE_TIME_HOLDS = Duration.ofDays(7);
    private static final String LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";

    private final AccountStore store;
    private final PasswordEncoder encoder;
    private final TransactionTemplate transaction;
    private final Clock clock;
    private final String nobody;

    AccountService(AccountStore store, PasswordEncoder encoder, TransactionTemplate transaction, Clock clock) {
        this.store = store;
        this.encoder = encoder;
        this.transaction = transaction;
        this.clock = clock;
        this.nobody = encoder.encode(UUID.randomUUID().toString());
    }

    /** Accounts for a single command, without the web around them. */
    public static AccountService over(DataSource dataSource, Clock clock) {
        return new AccountService(new AccountStore(JdbcClient.create(dataSource)), SecurityConfiguration.encoder(),
                DistrictScope.transactions(dataSource), clock);
    }

    /** The account with this name and password, own or one-time. An unknown name takes as long as a wrong password. */
    Optional<AccountStore.Account> check(String name, String password) {
        Optional<AccountStore.Account> account = place(name).flatMap(place -> DistrictScope.in(place.districtId(),
                () -> transaction.execute(status -> store.account(place.adultId()))));
        if (account.isEmpty()) {
            encoder.matches(PasswordRule.normal(password), nobody);
            return Optional.empty();
        }
        AccountStore.Account found = account.get();
        boolean expired = found.expiresAt() != null && found.expiresAt().isBefore(clock.instant());
        return encoder.matches(PasswordRule.normal(password), found.passwordHash()) && !expired ? account
                : Optional.empty();
    }

    private Optional<AccountStore.Place> place(String name) {
        return store.place(name.strip().toLowerCase(Locale.ROOT));
    }

    /** Whether a session that rests on this may go on. */
    boolean stands(SignedIn adult, Standing standing) {
        return now(adult).filter(standing::equals).isPresent();
    }

    /** What a session of the adult would rest on if it began now. */
    Optional<Standing> now(SignedIn adult) {
        return Objects.requireNonNull(DistrictScope.in(adult.districtId(),
                () -> transaction.execute(status -> store.standing(adult.adultId()))));
    }

    /** Ends every open session of an adult at its next request; call within a transaction of the district. */
    public void endSessions(int districtId, UUID adultId) {
        store.endSessions(districtId, adultId, "access_ended");
    }

    /** What became of a password that somebody chose. */
    sealed interface Choice {
        /** It holds from now on; other sessions of the adult are over. */
        record Taken(Standing standing) implements Choice {}

        /** Nothing changed. */
        record Refused(PasswordRule.Fault fault) implements Choice {}

        /** Name and former password do not fit, or its days are over. */
        record NoFit() implements Choice {}
    }

    /** Changes a one-time password into one of the adult's own choice. */
    Choice choose(String name, String oneTime, String chosen) {
        return change(check(name, oneTime).filter(AccountStore.Account::oneTime), oneTime, chosen);
    }

    /** Changes the adult's own password. */
    Choice change(SignedIn adult, String former, String chosen) {
        return change(check(adult.signIn(), former).filter(account -> !account.oneTime()
                && account.adult().adultId().equals(adult.adultId())), former, chosen);
    }

    private Choice change(Optional<AccountStore.Account> account, String former, String chosen) {
        if (account.isEmpty()) {
            return new Choice.NoFit();
        }
        SignedIn adult = account.get().adult();
        Optional<PasswordRule.Fault> fault = PasswordRule.normal(chosen).equals(PasswordRule.normal(former))
                ? Optional.of(PasswordRule.Fault.TOO_NEAR)
                : PasswordRule.fault(chosen, adult.signIn(), account.get().school());
        if (fault.isPresent()) {
            return new Choice.Refused(fault.get());
        }
        return Objects.requireNonNull(DistrictScope.in(adult.districtId(), () -> transaction.execute(status -> {
            setPassword(adult.districtId(), adult.adultId(), chosen);
            return new Choice.Taken(store.standing(adult.adultId()).orElseThrow());
        })));
    }

    /**
     * Gives an adult a one-time password, good for a week and for choosing an own one only; the former password ends.
     * Call within a transaction of the district.
     */
    public String giveOneTime(int districtId, UUID adultId) {
        String password = randomPassword();
        store.addCredential(districtId, adultId, encoder.encode(password), true, clock.instant().plus(ONE_TIME_HOLDS));
        return password;
    }

    /** A new one-time password for a sign-in name; empty when nobody has that name. */
    public Optional<String> reset(String name) {
        return place(name).map(place -> Objects.requireNonNull(DistrictScope.in(place.districtId(),
                () -> transaction.execute(status -> giveOneTime(place.districtId(), place.adultId())))));
    }

    /** Whether a sign-in name is taken on this server, by whatever district. */
    public boolean taken(String name) {
        return place(name).isPresent();
    }

    /** Every district with somebody who signs in, in order of number. */
    public List<Integer> districts() {
        return store.districts();
    }

    /** Whether the store has tables; without them nothing else here works. */
    public boolean ready() {
        return store.made();
    }

    /** Sixteen letters and digits that are not taken for each other, in groups of four. */
    public static String randomPassword() {
        SecureRandom random = new SecureRandom();
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 16; i++) {
            text.append(i > 0 && i % 4 == 0 ? "-" : "").append(LETTERS.charAt(random.nextInt(LETTERS.length())));
        }
        return text.toString();
    }

    /** Whether anybody can sign in on this server. */
    @Transactional(readOnly = true)
    public boolean anybody() {
        return store.anybody();
    }

    /** Which of these sign-in names exist in a district, with the adult behind each. */
    @Transactional(readOnly = true)
    public Map<String, UUID> known(int districtId, List<String> names) {
        Map<String, UUID> known = new LinkedHashMap<>();
        names.forEach(name -> store.place(name).filter(place -> place.districtId() == districtId)
                .ifPresent(place -> known.put(name, place.adultId())));
        return known;
    }

    /**
     * Sets a password that holds from now on, whatever it is; {@link PasswordRule} is for the caller to ask. Call
     * within a transaction of the district.
     */
    @Transactional
    public void setPassword(int districtId, UUID adultId, String password) {
        store.addCredential(districtId, adultId, encoder.encode(PasswordRule.normal(password)), false, null);
    }
}
