package org.tableweather.server.accounts;

import com.fasterxml.jackson.annotation.JsonUnwrapped;

/**
 * A fresh token.
 *
 * @param token the secret, shown this once
 * @param about the rest
 */
record IssuedToken(String token, @JsonUnwrapped TokenView about) {}
