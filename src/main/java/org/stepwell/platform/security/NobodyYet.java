package org.stepwell.platform.security;

import java.util.List;
import org.springframework.stereotype.Component;
import org.stepwell.platform.StartNotice;

/** Tells at the start of an empty store how the first adult gets in. */
@Component
class NobodyYet implements StartNotice {
    private final AccountService accounts;

    NobodyYet(AccountService accounts) {
        this.accounts = accounts;
    }

    @Override
    public List<String> lines() {
        return accounts.anybody() ? List.of() : List.of(
                "Nobody can sign in yet. Let the first teacher in from another terminal, for instance:",
                "  ./stepwell adult add ana@hill --name \"Ana Ruiz\" --school Hill --time-zone America/Chicago"
                        + " --class \"Room 1\" --new-class");
    }
}
