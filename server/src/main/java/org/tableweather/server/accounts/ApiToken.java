package org.tableweather.server.accounts;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;

/** A token as the server knows it: by its hash. */
@Entity
@Table(name = "api_token")
class ApiToken extends PanacheEntityBase {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    private Long id;

    @ManyToOne(fetch = FetchType.EAGER, optional = false)
    @JoinColumn(name = "account_id")
    private Account account;

    @Column(name = "secret_hash")
    private byte[] secretHash;

    private String label;
    private String scopes;

    @Column(name = "created_at")
    private Instant createdAt;

    @Column(name = "expires_at")
    private Instant expiresAt;

    @Column(name = "revoked_at")
    private Instant revokedAt;

    ApiToken() {}

    ApiToken(
            Account account, byte[] secretHash, String label, Set<Scope> scopes, Instant createdAt, Instant expiresAt) {
        this.account = account;
        this.secretHash = secretHash.clone();
        this.label = label;
        this.scopes = Scope.join(scopes);
        this.createdAt = createdAt;
        this.expiresAt = expiresAt;
    }

    /** Ends it for good. Again does nothing. */
    void revoke(Instant at) {
        if (revokedAt == null) {
            revokedAt = at;
        }
    }

    boolean isLive(Instant at) {
        return revokedAt == null && at.isBefore(expiresAt);
    }

    long id() {
        return id;
    }

    Account account() {
        return account;
    }

    String label() {
        return label;
    }

    Set<Scope> scopes() {
        return Scope.split(scopes);
    }

    Instant createdAt() {
        return createdAt;
    }

    Instant expiresAt() {
        return expiresAt;
    }

    Optional<Instant> revokedAt() {
        return Optional.ofNullable(revokedAt);
    }
}
