package org.tableweather.server.analysis;

import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;
import org.tableweather.server.accounts.Caller;
import org.tableweather.server.accounts.Scope;

/**
 * Who asks for an analysis to be made.
 *
 * @param token of an account; empty without a token
 * @param bounded what the bound for each caller counts by: the account, or else the address
 */
record RunCaller(Optional<Caller> token, String bounded) {
    private static final int NETWORK_BYTES = 8;

    /**
     * A caller.
     *
     * @param address that the request comes from; of IPv6 the first half counts, for one caller has the whole second one
     */
    static RunCaller of(Optional<Caller> token, String address) {
        return new RunCaller(
                token,
                token.map(known -> "account " + known.accountId()).orElseGet(() -> "address " + network(address)));
    }

    private static String network(String address) {
        try {
            // an address in digits is not looked up
            InetAddress known = InetAddress.getByName(address);
            return known instanceof Inet6Address
                    ? HexFormat.of().formatHex(Arrays.copyOf(known.getAddress(), NETWORK_BYTES))
                    : known.getHostAddress();
        } catch (UnknownHostException e) {
            return address;
        }
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
