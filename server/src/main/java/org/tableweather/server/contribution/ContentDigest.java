package org.tableweather.server.contribution;

import java.util.Base64;
import java.util.HexFormat;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/**
 * The header {@code Content-Digest: sha-256=:BASE64:}, by which a client says what it means to send.
 *
 * @source RFC9530
 */
final class ContentDigest {
    private static final Pattern SHA_256 = Pattern.compile("(?:^|,)\\s*sha-256=:([A-Za-z0-9+/]{43}=):");

    private ContentDigest() {}

    /**
     * The SHA-256 of the header as hex; empty when there is no header, or it speaks of other algorithms only.
     *
     * @param header may be null
     */
    static Optional<String> sha256(String header) {
        if (header == null) {
            return Optional.empty();
        }
        Matcher matcher = SHA_256.matcher(header);
        if (matcher.find()) {
            return Optional.of(HexFormat.of().formatHex(Base64.getDecoder().decode(matcher.group(1))));
        }
        if (header.contains("sha-256=")) {
            throw new Refusal(
                    ErrorCode.BAD_REQUEST,
                    "Content-Digest = " + header
                            + " is malformed: write sha-256=:BASE64: with 44 characters of base64");
        }
        return Optional.empty();
    }
}
