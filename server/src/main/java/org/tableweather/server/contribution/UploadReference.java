package org.tableweather.server.contribution;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;

/**
 * An archive that was uploaded in pieces.
 *
 * @param upload its SHA-256, hex
 */
record UploadReference(
        @NotNull @Pattern(regexp = "[0-9a-f]{64}") String upload) {}
