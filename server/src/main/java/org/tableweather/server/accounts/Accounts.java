package org.tableweather.server.accounts;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.tableweather.schema.digest.Sha256;
import org.tableweather.server.datafolder.Secret;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Page;
import org.tableweather.server.web.Refusal;

/** The only door to accounts and tokens. */
@ApplicationScoped
class Accounts {
    private static final String PREFIX = "tw_";

    private final AuditTrail audit;
    private final Clock clock;

    Accounts(AuditTrail audit, Clock clock) {
        this.audit = audit;
        this.clock = clock;
    }

    /** Whoever holds this token; empty when it is unknown, expired or revoked. */
    @Transactional
    Optional<Caller> callerOf(String token) {
        return ApiToken.<ApiToken>find("secretHash", hash(token))
                .firstResultOptional()
                .filter(found -> found.isLive(Instant.now(clock)))
                .map(found -> new Caller(
                        found.account().id(), found.id(), found.account().name(), found.scopes(), found.expiresAt()));
    }

    @Transactional
    AccountView create(Caller caller, String name, Role role) {
        if (Account.count("name", name) > 0) {
            throw new Refusal(
                    ErrorCode.NAME_TAKEN, "name = " + name + " belongs to an account already: choose another");
        }
        Account account = new Account(name, role, Instant.now(clock));
        account.persistAndFlush();
        audit.record(caller, "account.created", "account " + account.id(), name + ", " + role.schemaName());
        return AccountView.of(account);
    }

    @Transactional
    List<AccountView> all() {
        return Account.<Account>listAll().stream().map(AccountView::of).toList();
    }

    @Transactional
    AccountView account(long id) {
        return AccountView.of(find(id));
    }

    /** A fresh token; its secret is in the answer and nowhere else. */
    @Transactional
    IssuedToken issue(Caller caller, TokenRequest request) {
        Account account = find(request.account().orElse(caller.accountId()));
        Instant now = Instant.now(clock);
        Instant expires = now.plus(Duration.ofDays(request.expiresInDays()));
        checkMayIssue(caller, account, request.scopes(), expires);
        return issue(caller, account, request.label(), request.scopes(), now, expires);
    }

    private IssuedToken issue(
            Caller caller, Account account, String label, Set<Scope> scopes, Instant now, Instant expires) {
        String secret = PREFIX + Secret.random();
        ApiToken token = new ApiToken(account, hash(secret), label, scopes, now, expires);
        token.persistAndFlush();
        audit.record(
                caller,
                "token.issued",
                "token " + token.id(),
                "account " + account.id() + ", " + Scope.join(scopes) + ", until " + expires);
        return new IssuedToken(secret, TokenView.of(token));
    }

    private static void checkMayIssue(Caller caller, Account account, Set<Scope> scopes, Instant expires) {
        if (!account.role().scopes().containsAll(scopes)) {
            throw new Refusal(
                    ErrorCode.MISSING_SCOPE,
                    "scopes = " + Scope.join(scopes) + " exceed those of a "
                            + account.role().schemaName() + ", "
                            + Scope.join(account.role().scopes()) + ": ask for less");
        }
        if (caller.may(Scope.OPERATE)) {
            return;
        }
        if (account.id() != caller.accountId()) {
            throw new Refusal(
                    ErrorCode.NOT_YOURS,
                    "account = " + account.id() + " is not yours, " + caller.accountId()
                            + ": leave it out, or use a token with the scope operate");
        }
        if (!caller.scopes().containsAll(scopes) || expires.isAfter(caller.tokenExpiresAt())) {
            throw new Refusal(
                    ErrorCode.MISSING_SCOPE,
                    "a token can make only narrower ones, within " + Scope.join(caller.scopes()) + " and until "
                            + caller.tokenExpiresAt() + ": ask for less, or have the operator make it");
        }
    }

    @Transactional
    void revoke(Caller caller, long id) {
        ApiToken token = ApiToken.<ApiToken>findByIdOptional(id)
                .filter(found -> caller.may(Scope.OPERATE) || found.account().id() == caller.accountId())
                .orElseThrow(() -> new Refusal(
                        ErrorCode.NOT_FOUND, "token " + id + " is none of yours: GET /api/v1/tokens lists them"));
        token.revoke(Instant.now(clock));
        audit.record(caller, "token.revoked", "token " + id, token.label());
    }

    /** The caller's own tokens, or those of all accounts for an operator. */
    @Transactional
    List<TokenView> tokens(Caller caller) {
        List<ApiToken> tokens = caller.may(Scope.OPERATE)
                ? ApiToken.list("order by id")
                : ApiToken.list("account.id = ?1 order by id", caller.accountId());
        return tokens.stream().map(TokenView::of).toList();
    }

    @Transactional
    Page<AuditView> auditTrail(Optional<Long> before, int limit) {
        List<AuditView> rows = AuditEntry.<AuditEntry>find("id < ?1 order by id desc", before.orElse(Long.MAX_VALUE))
                .page(0, limit + 1)
                .<AuditEntry>list()
                .stream()
                .map(AuditEntry::view)
                .toList();
        return Page.of(rows, limit, row -> Long.toString(row.id()));
    }

    /**
     * A token for the operator when there is none that works: at the first start, or after the last one was lost.
     *
     * @return the secret; empty when there is one already
     */
    @Transactional
    Optional<IssuedToken> firstOperatorToken(Duration lifetime) {
        Instant now = Instant.now(clock);
        boolean reachable = ApiToken.count("scopes like '%operate%' and revokedAt is null and expiresAt > ?1", now) > 0;
        if (reachable) {
            return Optional.empty();
        }
        Account operator = Account.<Account>find("role", Role.OPERATOR.schemaName())
                .firstResultOptional()
                .orElseGet(() -> {
                    Account first = new Account("operator", Role.OPERATOR, now);
                    first.persistAndFlush();
                    return first;
                });
        Set<Scope> all = operator.role().scopes();
        return Optional.of(issue(Caller.SERVER, operator, "first token", all, now, now.plus(lifetime)));
    }

    private static Account find(long id) {
        return Account.<Account>findByIdOptional(id)
                .orElseThrow(() -> new Refusal(
                        ErrorCode.NOT_FOUND, "account " + id + " does not exist: GET /api/v1/accounts lists them"));
    }

    private static byte[] hash(String token) {
        return Sha256.of(token.getBytes(StandardCharsets.UTF_8));
    }
}
