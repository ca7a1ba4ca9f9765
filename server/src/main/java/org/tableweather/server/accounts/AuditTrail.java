package org.tableweather.server.accounts;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;

/** Where every write leaves its trace, in the transaction of the write itself. */
@ApplicationScoped
public class AuditTrail {
    private final Clock clock;

    AuditTrail(Clock clock) {
        this.clock = clock;
    }

    /**
     * Adds an entry to the current transaction.
     *
     * @param caller who; {@link Caller#SERVER} for the server itself
     * @param action {@code contribution.accepted} ...
     * @param subject what it was done to
     * @param detail in words
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void record(Caller caller, String action, String subject, String detail) {
        Long account = caller.isServer() ? null : caller.accountId();
        Long token = caller.isServer() ? null : caller.tokenId();
        new AuditEntry(Instant.now(clock), account, token, action, subject, detail).persist();
    }
}
