package org.tableweather.server.accounts;

import java.time.Instant;

/**
 * An account as it is shown.
 *
 * @param id number
 * @param name unique
 * @param role what it is for
 * @param createdAt when it was made
 */
record AccountView(long id, String name, Role role, Instant createdAt) {

    static AccountView of(Account account) {
        return new AccountView(account.id(), account.name(), account.role(), account.createdAt());
    }
}
