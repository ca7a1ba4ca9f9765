package org.tableweather.server.web;

import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.HexFormat;

/** Addresses that requests come from, as bounds for each caller count them. */
public final class ClientAddress {
    private static final int NETWORK_BYTES = 8;

    private ClientAddress() {}

    /**
     * What one caller cannot change at will: of IPv4 the address; of IPv6 its first half, for one caller has the whole
     * second one.
     *
     * @param address in digits
     */
    public static String network(String address) {
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
}
