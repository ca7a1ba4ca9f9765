package org.tableweather.server.analysis;

import java.util.Optional;
import org.tableweather.server.accounts.Caller;
import org.tableweather.server.accounts.Scope;
import org.tableweather.server.web.ClientAddress;

/**
 * Who asks for an analysis to be made.
 *
 * @param token of an account; empty without a token
 * @param bounded what the bound for each caller counts by: the account, or else the address
 */
record RunCaller(Optional<Caller> token, String bounded) {
    /**
     * A caller.
     *
     * @param address that the request comes from
     */
    static RunCaller of(Optional<Caller> token, String address) {
        return new RunCaller(
                token,
                token.map(known -> "account " + known.accountId())
                        .orElseGet(() -> "address " + ClientAddress.network(address)));
    }

    /** The account; empty without a token. */
    Optional<Long> account() {
        return token.map(Caller::accountId);
    }

    /** Whether this one may cancel what that account started. */
    boolean mayCancel(Optional<Long> starter) {
        return starter.isEmpty()
                || account().equals(starter)
                || token.filter(known -> known.may(Scope.OPERATE) || known.may(Scope.CURATE))
                        .isPresent();
    }
}
