package org.tableweather.server.datafolder;

import java.security.SecureRandom;
import java.util.Base64;

/** Random secrets of 256 bits. */
public final class Secret {
    private static final int BYTES = 32;
    private static final SecureRandom RANDOM = new SecureRandom();

    private Secret() {}

    /** 43 characters of URL-safe base64. */
    public static String random() {
        byte[] bytes = new byte[BYTES];
        RANDOM.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }
}
