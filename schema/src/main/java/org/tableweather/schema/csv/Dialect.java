package org.tableweather.schema.csv;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * How a separated text is written.
 *
 * @param separator comma, semicolon or tab
 * @param charset UTF-8, or UTF-16 when the byte-order mark says so
 * @param markLength bytes of the byte-order mark, 0 without
 * @param lineEnd {@code LF}, {@code CRLF} or {@code CR}
 * @param separatorLine whether the first line is a spreadsheet's {@code sep=;}
 */
public record Dialect(char separator, Charset charset, int markLength, String lineEnd, boolean separatorLine) {
    private static final int LOG_LINES = 40;
    private static final char[] SEPARATORS = {',', ';', '\t'};

    /**
     * Guesses from the beginning of a file: the separator that yields most known column names, else most cells.
     *
     * @param head the first bytes, enough for the header
     * @param length how many of them
     * @param known column names in lower case
     */
    public static Dialect of(byte[] head, int length, Set<String> known) {
        Charset charset = StandardCharsets.UTF_8;
        int mark = 0;
        if (startsWith(head, length, 0xEF, 0xBB, 0xBF)) {
            mark = 3;
        } else if (startsWith(head, length, 0xFF, 0xFE)) {
            charset = StandardCharsets.UTF_16LE;
            mark = 2;
        } else if (startsWith(head, length, 0xFE, 0xFF)) {
            charset = StandardCharsets.UTF_16BE;
            mark = 2;
        }
        String text = new String(head, mark, length - mark, charset);
        String lineEnd = lineEnd(text);
        int start = firstLine(text);
        String header = line(text, start);
        if (header.length() == 5
                && header.toLowerCase(Locale.ROOT).startsWith("sep=")
                && ",;\t|".indexOf(header.charAt(4)) >= 0) {
            return new Dialect(header.charAt(4), charset, mark, lineEnd, true);
        }
        return new Dialect(separator(header, known), charset, mark, lineEnd, false);
    }

    /**
     * Guesses for a file that may begin with other lines than its header: the separator that splits the first lines into
     * the most cells, all in all.
     *
     * @param head the first bytes
     */
    public static Dialect ofLog(byte[] head) {
        Dialect first = of(head, head.length, Set.of());
        String text = new String(head, first.markLength(), head.length - first.markLength(), first.charset());
        List<String> lines = text.lines().limit(LOG_LINES).toList();
        char best = ',';
        int bestCells = 0;
        for (char candidate : new char[] {'\t', ';', ','}) {
            int cells = lines.stream()
                    .mapToInt(line -> cells(line, candidate).size() - 1)
                    .sum();
            if (cells > bestCells) {
                best = candidate;
                bestCells = cells;
            }
        }
        return new Dialect(best, first.charset(), first.markLength(), first.lineEnd(), false);
    }

    /** The cells of one line, quotes taken off. */
    static List<String> cells(String line, char separator) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (char c : line.toCharArray()) {
            if (c == '"') {
                quoted = !quoted;
            } else if (c == separator && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }

    /** Separator, decimal mark, encoding and line ends in words. */
    public String inWords(long points, long commas) {
        String name = separator == ','
                ? "comma"
                : separator == ';' ? "semicolon" : separator == '\t' ? "tab" : "'" + separator + "'";
        String decimal = commas == 0 ? "decimal point" : points == 0 ? "decimal comma" : "decimal points and commas";
        return name + "-separated, " + decimal + ", " + charset.name() + (markLength > 0 ? " with byte-order mark" : "")
                + ", " + lineEnd + " line ends";
    }

    private static char separator(String header, Set<String> known) {
        char best = ',';
        long bestScore = -1;
        for (char candidate : SEPARATORS) {
            List<String> cells = cells(header, candidate);
            long names = cells.stream()
                    .filter(cell -> known.contains(cell.strip().toLowerCase(Locale.ROOT)))
                    .count();
            long score = names * 1_000_000 + cells.size();
            if (score > bestScore) {
                best = candidate;
                bestScore = score;
            }
        }
        return best;
    }

    private static boolean startsWith(byte[] head, int length, int... bytes) {
        if (length < bytes.length) {
            return false;
        }
        for (int i = 0; i < bytes.length; i++) {
            if ((head[i] & 0xFF) != bytes[i]) {
                return false;
            }
        }
        return true;
    }

    private static String lineEnd(String text) {
        int lf = text.indexOf('\n');
        int cr = text.indexOf('\r');
        if (cr >= 0 && lf == cr + 1) {
            return "CRLF";
        }
        return lf < 0 && cr >= 0 ? "CR" : "LF";
    }

    private static int firstLine(String text) {
        int start = 0;
        while (start < text.length() && (text.charAt(start) == '\n' || text.charAt(start) == '\r')) {
            start++;
        }
        return start;
    }

    private static String line(String text, int start) {
        int end = start;
        while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
            end++;
        }
        return text.substring(start, end);
    }
}
