package org.tableweather.server.accounts;

import io.quarkus.security.UnauthorizedException;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** The door to whoever is asking. */
@ApplicationScoped
public class Callers {
    static final String ATTRIBUTE = "caller";

    private final SecurityIdentity identity;
    private final Accounts accounts;
    private final FailureLimit failures;

    Callers(SecurityIdentity identity, Accounts accounts, FailureLimit failures) {
        this.identity = identity;
        this.accounts = accounts;
        this.failures = failures;
    }

    /**
     * Whoever is asking.
     *
     * @throws UnauthorizedException when no token was sent
     */
    public Caller current() {
        return ifAny().orElseThrow(UnauthorizedException::new);
    }

    /** Whoever is asking; empty when no token was sent. */
    public Optional<Caller> ifAny() {
        return Optional.ofNullable(identity.<Caller>getAttribute(ATTRIBUTE));
    }

    /**
     * Whoever typed this token into a form.
     *
     * @param token as typed
     * @param scope that it must have
     * @param address that the request comes from: refused tokens are counted by it
     * @throws Refusal when the token is not valid, does not reach so far, or too many were refused
     */
    public Caller byToken(String token, Scope scope, String address) {
        if (failures.isExceeded(address)) {
            throw failures.refusal(address);
        }
        Caller caller = accounts.callerOf(token).orElseThrow(() -> {
            failures.count(address);
            return new Refusal(
                    ErrorCode.NOT_AUTHENTICATED,
                    "this server does not know the token, or it expired or was revoked: look for a slip (a token begins"
                            + " with tw_), or ask the operator of this server for a new one");
        });
        if (!caller.may(scope)) {
            throw new Refusal(
                    ErrorCode.MISSING_SCOPE,
                    "the token does not allow this: ask the operator of this server for one with the scope "
                            + scope.schemaName());
        }
        return caller;
    }
}
