package org.tableweather.schema.check;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import org.tableweather.schema.caution.Caution;

/**
 * A caution that sessions of a contribution call for.
 *
 * @param session id of the session that calls for it most
 * @param sessions how many sessions call for it
 * @param caution as that session calls for it
 */
public record SessionCaution(
        String session, long sessions, @JsonUnwrapped Caution caution) {}
