package org.tableweather.cluster;

/** Why a run ends early: one line, one remedy, one exit code, the same codes as the command's. */
final class ClusterFailure extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private static final int FAULT = 1;
    private static final int USAGE = 2;
    private static final int REFUSED = 3;
    private static final int CLUSTER = 4;

    private final int exitCode;
    private final String remedy;

    private ClusterFailure(int exitCode, String message, String remedy, Throwable cause) {
        super(message, cause);
        this.exitCode = exitCode;
        this.remedy = remedy;
    }

    static ClusterFailure usage(String message, String remedy) {
        return new ClusterFailure(USAGE, message, remedy, null);
    }

    static ClusterFailure fault(String message, String remedy) {
        return new ClusterFailure(FAULT, message, remedy, null);
    }

    static ClusterFailure refused(String message) {
        return new ClusterFailure(REFUSED, message, "", null);
    }

    static ClusterFailure cluster(String message, String remedy) {
        return new ClusterFailure(CLUSTER, message, remedy, null);
    }

    /** What Spark threw: the first line of it, which names the task's own complaint. */
    static ClusterFailure ofSpark(Exception thrown) {
        String text = String.valueOf(thrown.getMessage()).strip();
        String line = text.lines().findFirst().orElse(thrown.getClass().getName());
        return new ClusterFailure(
                CLUSTER,
                "the cluster gave up: " + line,
                "look at the logs of its workers; every worker must see the release under the same path",
                thrown);
    }

    int exitCode() {
        return exitCode;
    }

    /** What to do; may be empty. */
    String remedy() {
        return remedy;
    }
}
