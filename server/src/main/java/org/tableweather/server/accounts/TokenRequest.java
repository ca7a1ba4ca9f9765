package org.tableweather.server.accounts;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.Size;
import java.util.Optional;
import java.util.Set;

/**
 * A token to be made.
 *
 * @param account whose; empty for the caller's own
 * @param label what it is for
 * @param scopes what it may do
 * @param expiresInDays how long it lives
 */
record TokenRequest(
        Optional<Long> account,
        @NotBlank @Size(max = 100) String label,
        @NotEmpty Set<Scope> scopes,
        @Min(1) @Max(3650) int expiresInDays) {

    TokenRequest {
        account = account == null ? Optional.empty() : account;
        scopes = scopes == null ? Set.of() : Set.copyOf(scopes);
    }
}
