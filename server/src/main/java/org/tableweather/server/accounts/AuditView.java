package org.tableweather.server.accounts;

import java.time.Instant;

/**
 * An entry of the audit trail as it is shown.
 *
 * @param id grows with time
 * @param at when
 * @param account who; null for the server itself
 * @param token with which token; null for the server itself
 * @param action {@code contribution.accepted} ...
 * @param subject what it was done to
 * @param detail in words
 */
record AuditView(long id, Instant at, Long account, Long token, String action, String subject, String detail) {}
