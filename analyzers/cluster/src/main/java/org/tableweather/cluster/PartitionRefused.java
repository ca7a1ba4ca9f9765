package org.tableweather.cluster;

/** Data that are not what their release says; no executor can do better. */
public final class PartitionRefused extends Exception {
    private static final long serialVersionUID = 1L;

    /** Refused for this reason. */
    public PartitionRefused(String message) {
        super(message);
    }
}
