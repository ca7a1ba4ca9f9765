package org.tableweather.server.release;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * What an operator asks for.
 *
 * @param title of the release, in words
 */
record ReleaseRequest(
        @NotBlank(message = "is empty: say in words what is released")
        @Size(max = 200, message = "longer than 200 characters: say it in fewer")
        @Schema(examples = "Spring sessions")
        String title) {}
