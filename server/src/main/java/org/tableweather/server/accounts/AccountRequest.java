package org.tableweather.server.accounts;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;

/**
 * An account to be made.
 *
 * @param name unique
 * @param role what it is for
 */
record AccountRequest(
        @NotBlank @Size(max = 100) String name, @NotNull Role role) {}
