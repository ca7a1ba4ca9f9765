package org.tableweather.server.accounts;

import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.TokenAuthenticationRequest;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;

/** Knows a token by its hash. */
@ApplicationScoped
class TokenIdentityProvider implements IdentityProvider<TokenAuthenticationRequest> {
    private final Accounts accounts;

    TokenIdentityProvider(Accounts accounts) {
        this.accounts = accounts;
    }

    @Override
    public Class<TokenAuthenticationRequest> getRequestType() {
        return TokenAuthenticationRequest.class;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(
            TokenAuthenticationRequest request, AuthenticationRequestContext context) {
        String token = request.getToken().getToken();
        return context.runBlocking(() -> accounts.callerOf(token)
                .map(TokenIdentityProvider::identity)
                .orElseThrow(AuthenticationFailedException::new));
    }

    private static SecurityIdentity identity(Caller caller) {
        QuarkusSecurityIdentity.Builder identity = QuarkusSecurityIdentity.builder()
                .setPrincipal(new QuarkusPrincipal(caller.name()))
                .addAttribute(Callers.ATTRIBUTE, caller);
        caller.scopes().forEach(scope -> identity.addRole(scope.schemaName()));
        return identity.build();
    }
}
