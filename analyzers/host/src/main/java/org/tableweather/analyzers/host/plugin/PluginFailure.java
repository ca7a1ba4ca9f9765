package org.tableweather.analyzers.host.plugin;

/** An analyzer from outside that broke its contract or its bounds while it was asked. */
public final class PluginFailure extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private static final int LONGEST = 500;

    PluginFailure(String message) {
        super(message);
    }

    PluginFailure(String message, Throwable cause) {
        super(message, cause);
    }

    /** What was thrown, in one bounded line; asks foreign code for its message, and survives the asking. */
    static String inWords(Throwable thrown) {
        String type = thrown.getClass().getName();
        try {
            String text = thrown.getMessage() == null ? type : type + ": " + thrown.getMessage();
            return shortened(text.replaceAll("\\s+", " "));
        } catch (Throwable again) {
            return type;
        }
    }

    static String shortened(String text) {
        return text.length() <= LONGEST ? text : text.substring(0, LONGEST) + " ...";
    }
}
