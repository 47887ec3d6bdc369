package org.stepwell.roster;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.stepwell.platform.security.AccountService;

/**
 * The code that opens the set-up page of a store without anybody in it. It lives in the memory of one run and is made
 * anew at the next; once somebody can sign in there is none.
 */
@Component
class SetUpCode {
    private final AccountService accounts;
    private @Nullable String code;

    SetUpCode(AccountService accounts) {
        this.accounts = accounts;
    }

    /** The code; empty when somebody can sign in. */
    synchronized Optional<String> now() {
        if (accounts.anybody()) {
            code = null;
            return Optional.empty();
        }
        if (code == null) {
            code = AccountService.randomPassword();
        }
        return Optional.of(code);
    }

    /** Whether this is the code, however it was spaced, dashed or capitalized. */
    boolean fits(String typed) {
        return now().map(bare -> MessageDigest.isEqual(bytes(bare), bytes(typed))).orElse(false);
    }

    private static byte[] bytes(String text) {
        return bare(text).getBytes(StandardCharsets.UTF_8);
    }

    /** A code without what people add when they copy it by hand. */
    static String bare(String code) {
        return code.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
    }
}
