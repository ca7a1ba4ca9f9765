package org.tableweather.server.accounts;

import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.credential.TokenCredential;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.AuthenticationRequest;
import io.quarkus.security.identity.request.TokenAuthenticationRequest;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.smallrye.mutiny.Uni;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import java.util.Set;

/** Takes the token from the header {@code Authorization: Bearer tw_...}. */
@ApplicationScoped
class TokenMechanism implements HttpAuthenticationMechanism {
    private static final String SCHEME = "Bearer ";
    private final FailureLimit failures;

    TokenMechanism(FailureLimit failures) {
        this.failures = failures;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(RoutingContext context, IdentityProviderManager providers) {
        String header = context.request().getHeader(HttpHeaders.AUTHORIZATION);
        if (header == null) {
            return Uni.createFrom().optional(Optional.empty());
        }
        String address = context.request().remoteAddress().hostAddress();
        if (failures.isExceeded(address)) {
            return Uni.createFrom().failure(new AuthenticationFailedException(failures.refusal(address)));
        }
        if (!header.regionMatches(true, 0, SCHEME, 0, SCHEME.length())) {
            return Uni.createFrom().failure(new AuthenticationFailedException());
        }
        String token = header.substring(SCHEME.length()).strip();
        TokenCredential credential = new TokenCredential(token, "bearer");
        return providers
                .authenticate(new TokenAuthenticationRequest(credential))
                .onFailure(AuthenticationFailedException.class)
                .invoke(() -> failures.count(address));
    }

    @Override
    public Uni<ChallengeData> getChallenge(RoutingContext context) {
        return Uni.createFrom().item(new ChallengeData(401, "WWW-Authenticate", "Bearer"));
    }

    @Override
    public Set<Class<? extends AuthenticationRequest>> getCredentialTypes() {
        return Set.of(TokenAuthenticationRequest.class);
    }
}
