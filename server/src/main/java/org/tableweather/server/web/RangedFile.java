package org.tableweather.server.web;

import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jboss.resteasy.reactive.PathPart;

/**
 * A file as it is handed out: whole, or from a given byte on, so that a download can go on.
 *
 * @param file where it is
 * @param mediaType what it is
 */
public record RangedFile(Path file, String mediaType) {
    private static final Pattern FROM = Pattern.compile("bytes=([0-9]{1,18})-");

    /**
     * The answer, 200 or 206.
     *
     * @param range header Range; null, or one that is not of the form {@code bytes=N-}, gives the whole
     * @source RFC9110
     */
    public Response.ResponseBuilder answer(String range) {
        try {
            long size = Files.size(file);
            Matcher from = FROM.matcher(String.valueOf(range));
            long first = from.matches() ? Long.parseLong(from.group(1)) : 0;
            if (first == 0) {
                return headers(Response.ok(new PathPart(file, 0, size)));
            }
            if (first >= size) {
                return headers(Response.status(416)).header("Content-Range", "bytes */" + size);
            }
            return headers(Response.status(206).entity(new PathPart(file, first, size - first)))
                    .header("Content-Range", "bytes " + first + "-" + (size - 1) + "/" + size);
        } catch (IOException e) {
            throw new UncheckedIOException(file.getFileName() + " should be on disk and is not", e);
        }
    }

    private Response.ResponseBuilder headers(Response.ResponseBuilder answer) {
        return answer.type(mediaType)
                .header("Accept-Ranges", "bytes")
                .header("Content-Disposition", "attachment; filename=\"" + file.getFileName() + "\"");
    }
}
