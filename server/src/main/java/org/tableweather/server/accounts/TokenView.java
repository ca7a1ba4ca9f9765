package org.tableweather.server.accounts;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;

/**
 * A token as it is shown: without its secret.
 *
 * @param id number
 * @param account whose
 * @param label what it is for
 * @param scopes what it may do
 * @param createdAt when it was made
 * @param expiresAt when it ends
 * @param revokedAt when it was ended
 */
record TokenView(
        long id,
        long account,
        String label,
        Set<Scope> scopes,
        Instant createdAt,
        Instant expiresAt,
        Optional<Instant> revokedAt) {

    static TokenView of(ApiToken token) {
        return new TokenView(
                token.id(),
                token.account().id(),
                token.label(),
                token.scopes(),
                token.createdAt(),
                token.expiresAt(),
                token.revokedAt());
    }
}
