package org.stepwell.platform.security;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Issues, lists and ends the passes of tablets. A pass goes out in a header that no other site's page can set, never as
 * a cookie; the store holds only its hash.
 */
@Service
public class TabletPassService {
    /** How long a pass lets looks in. */
    public static final Duration HOLDS = Duration.ofDays(14);
    /** Header that carries the token of a pass. */
    public static final String HEADER = "X-Stepwell-Pass";
    private static final Pattern TOKEN = Pattern.compile("1\\.(\\d{1,9})\\.[A-Za-z0-9_-]{43}");
    private static final int LONGEST_LABEL = 200;

    private final TabletPassStore store;
    private final AccountStore accounts;
    private final TransactionTemplate transaction;
    private final CurrentAdult current;
    private final Clock clock;

    TabletPassService(TabletPassStore store, AccountStore accounts, TransactionTemplate transaction,
            CurrentAdult current, Clock clock) {
        this.store = store;
        this.accounts = accounts;
        this.transaction = transaction;
        this.current = current;
        this.clock = clock;
    }

    /**
     * A pass just made.
     *
     * @param token what the tablet sends; told once and kept nowhere here
     */
    public record Issued(String token, TabletPass pass) {}

    /** Who a token speaks for. */
    record Bearer(SignedIn adult, TabletPass pass) {}

    /** Makes a pass for the signed-in adult; whether the class is that adult's is for the caller to hold. */
    @Transactional
    public Issued issue(UUID classId, UUID deviceId, String label) {
        SignedIn adult = current.get();
        byte[] bytes = new byte[32];
        new SecureRandom().nextBytes(bytes);
        String token = "1." + adult.districtId() + "." + Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
        return new Issued(token, store.addPass(adult.districtId(), adult.adultId(), classId, deviceId,
                label.substring(0, Math.min(label.length(), LONGEST_LABEL)), hash(token),
                clock.instant().plus(HOLDS)));
    }

    /** Every pass of the signed-in adult, newest first, ended ones too. */
    @Transactional(readOnly = true)
    public List<TabletPass> mine() {
        return store.passes(current.get().adultId());
    }

    /** Ends one of the signed-in adult's passes at once; says whether there was one to end. */
    @Transactional
    public boolean revoke(UUID passId) {
        return store.revoke(current.get().adultId(), passId, clock.instant());
    }

    /** Who a token speaks for now; empty when it is unknown, ended or past its days. */
    Optional<Bearer> bearer(String token) {
        Matcher form = TOKEN.matcher(token);
        if (!form.matches()) {
            return Optional.empty();
        }
        return DistrictScope.in(Integer.parseInt(form.group(1)), () -> transaction.execute(status -> store
                .pass(hash(token)).filter(pass -> pass.holds(clock.instant()))
                .flatMap(pass -> accounts.account(pass.adultId()).map(a -> new Bearer(a.adult(), pass)))));
    }

    private static byte[] hash(String token) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException(missing);
        }
    }
}
