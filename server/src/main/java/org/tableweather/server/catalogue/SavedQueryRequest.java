package org.tableweather.server.catalogue;

import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * What to save.
 *
 * @param filter parameters of the lists and their values, texts or numbers
 */
record SavedQueryRequest(
        @NotNull @NotEmpty @Schema(examples = "{\"shot\": \"kick-3-rail\", \"rhFrom\": 55}")
        Map<String, Object> filter) {}
