package org.tableweather.analyzers.host.plugin;

/** A jar that cannot be used as a plugin. */
public final class PluginRefused extends Exception {
    private static final long serialVersionUID = 1L;
    private final String remedy;

    PluginRefused(String message, String remedy) {
        super(message);
        this.remedy = remedy;
    }

    PluginRefused(String message, String remedy, Throwable cause) {
        super(message, cause);
        this.remedy = remedy;
    }

    /** What to do. */
    public String remedy() {
        return remedy;
    }
}
