package org.tableweather.server.accounts;

import java.time.Instant;
import java.util.Set;

/**
 * Who is asking, as the token says.
 *
 * @param accountId the account
 * @param tokenId the token
 * @param name the account's name
 * @param scopes what the token may do
 * @param tokenExpiresAt when the token ends
 */
public record Caller(long accountId, long tokenId, String name, Set<Scope> scopes, Instant tokenExpiresAt) {

    /** The server itself, on start. */
    public static final Caller SERVER = new Caller(0, 0, "server", Set.of(), Instant.EPOCH);

    public Caller {
        scopes = Set.copyOf(scopes);
    }

    /** Whether the token reaches this far. */
    public boolean may(Scope scope) {
        return scopes.contains(scope);
    }

    boolean isServer() {
        return accountId == 0;
    }
}
