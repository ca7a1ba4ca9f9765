package org.tableweather.server.accounts;

import io.quarkus.security.UnauthorizedException;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;

/** The door to whoever is asking. */
@ApplicationScoped
public class Callers {
    static final String ATTRIBUTE = "caller";

    private final SecurityIdentity identity;

    Callers(SecurityIdentity identity) {
        this.identity = identity;
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
}
