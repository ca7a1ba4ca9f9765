package org.tableweather.cli;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.tableweather.analyzers.host.TextCurve;

/**
 * What is at the other end of the streams. Java cannot tell, so the launcher says it in system properties.
 *
 * @param errIsTerminal whether talk is seen by a person
 * @param columns width in characters
 * @param unicode whether it shows more than ASCII
 */
record Terminal(boolean errIsTerminal, int columns, boolean unicode) {
    private static final int USUAL_COLUMNS = 80;

    /** The terminal of this process. */
    static Terminal current() {
        return of(Map.copyOf(System.getenv()), Charset.defaultCharset());
    }

    static Terminal of(Map<String, String> environment, Charset charset) {
        boolean unicode = charset.equals(StandardCharsets.UTF_8) && !"dumb".equals(environment.get("TERM"));
        return new Terminal(Boolean.getBoolean("tableweather.stderr.terminal"), columns(environment), unicode);
    }

    private static int columns(Map<String, String> environment) {
        String stated = environment.getOrDefault("COLUMNS", System.getProperty("tableweather.columns", ""));
        try {
            int columns = Integer.parseInt(stated.strip());
            return columns > 0 ? columns : USUAL_COLUMNS;
        } catch (NumberFormatException e) {
            return USUAL_COLUMNS;
        }
    }

    /** The characters for drawing. */
    TextCurve.Ink ink() {
        return unicode ? TextCurve.Ink.UNICODE : TextCurve.Ink.ASCII;
    }
}
