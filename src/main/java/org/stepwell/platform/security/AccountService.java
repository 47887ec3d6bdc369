package org.stepwell.platform.security;

import java.time.Clock;
import java.util.Optional;
import java.util.UUID;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

/** Checks and sets passwords. */
@Service
public class AccountService {
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

    /** The adult with this name and password. An unknown name takes as long as a wrong password. */
    public Optional<SignedIn> signIn(String name, String password) {
        Optional<AccountStore.Account> account = store.place(name.strip().toLowerCase(java.util.Locale.ROOT))
                .flatMap(place -> DistrictScope.in(place.districtId(),
                        () -> transaction.execute(status -> store.account(place.adultId()))));
        if (account.isEmpty()) {
            encoder.matches(password, nobody);
            return Optional.empty();
        }
        AccountStore.Account found = account.get();
        boolean expired = found.expiresAt() != null && found.expiresAt().isBefore(clock.instant());
        return encoder.matches(password, found.passwordHash()) && !expired
                ? Optional.of(found.adult()) : Optional.empty();
    }

    /** Whether anybody can sign in on this server. */
    @Transactional(readOnly = true)
    public boolean anybody() {
        return store.anybody();
    }

    /** Which of these sign-in names exist in a district, with the adult behind each. */
    @Transactional(readOnly = true)
    public java.util.Map<String, UUID> known(int districtId, java.util.List<String> names) {
        java.util.Map<String, UUID> known = new java.util.LinkedHashMap<>();
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
