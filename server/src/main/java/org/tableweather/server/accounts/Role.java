package org.tableweather.server.accounts;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;
import java.util.Set;

/** What an account is for; bounds the scopes of its tokens. */
public enum Role {
    CONTRIBUTOR(Scope.CONTRIBUTE),
    CURATOR(Scope.CONTRIBUTE, Scope.CURATE),
    OPERATOR(Scope.CONTRIBUTE, Scope.CURATE, Scope.OPERATE);

    private final Set<Scope> scopes;

    Role(Scope... scopes) {
        this.scopes = Set.of(scopes);
    }

    /** Scopes that a token of such an account may have. */
    Set<Scope> scopes() {
        return scopes;
    }

    @JsonValue
    public String schemaName() {
        return name().toLowerCase(Locale.ROOT);
    }

    static Role of(String schemaName) {
        return valueOf(schemaName.toUpperCase(Locale.ROOT));
    }
}
