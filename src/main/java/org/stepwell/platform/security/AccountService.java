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
    /** Fewest characters of a password. */
    public static final int SHORTEST = 12;
    /** Most characters of a password. */
    public static final int LONGEST = 128;
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
            encoder.matches(password, nobody);
            return Optional.empty();
        }
        AccountStore.Account found = account.get();
        boolean expired = found.expiresAt() != null && found.expiresAt().isBefore(clock.instant());
        return encoder.matches(password, found.passwordHash()) && !expired ? account : Optional.empty();
    }

    private Optional<AccountStore.Place> place(String name) {
        return store.place(name.strip().toLowerCase(Locale.ROOT));
    }

    /** What became of a password that somebody chose for the first time. */
    public enum Choice {
        /** It holds from now on; the one-time password is used up. */
        SET,
        /** Name and one-time password do not fit, or its days are over. */
        NO_FIT,
        /** Fewer than {@link #SHORTEST} characters. */
        TOO_SHORT,
        /** More than {@link #LONGEST} characters. */
        TOO_LONG,
        /** It is the one-time password again, or holds the sign-in name. */
        TOO_NEAR
    }

    /** Changes a one-time password into one of the adult's own choice. Length alone is asked for, no kinds of signs. */
    public Choice choose(String name, String oneTime, String chosen) {
        Optional<AccountStore.Account> account = check(name, oneTime).filter(AccountStore.Account::oneTime);
        if (account.isEmpty()) {
            return Choice.NO_FIT;
        }
        int length = chosen.codePointCount(0, chosen.length());
        if (length < SHORTEST || length > LONGEST) {
            return length < SHORTEST ? Choice.TOO_SHORT : Choice.TOO_LONG;
        }
        String lower = chosen.toLowerCase(Locale.ROOT);
        if (chosen.equals(oneTime) || lower.contains(name.strip().toLowerCase(Locale.ROOT))) {
            return Choice.TOO_NEAR;
        }
        SignedIn adult = account.get().adult();
        DistrictScope.in(adult.districtId(), () -> transaction.execute(status -> {
            setPassword(adult.districtId(), adult.adultId(), chosen);
            return adult;
        }));
        return Choice.SET;
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

    /** Sets a password that holds from now on; call within a transaction of the district. */
    @Transactional
    public void setPassword(int districtId, UUID adultId, String password) {
        store.addCredential(districtId, adultId, encoder.encode(password), false, null);
    }
}
