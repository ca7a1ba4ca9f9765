package org.tableweather.cluster;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URISyntaxException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;

/** A connection to a cluster, made so that executors run our own jars. */
final class ClusterContext {
    private static final String MASTER = "spark.master";
    private static final String JARS = "spark.jars";
    private static final Pattern STANDALONE = Pattern.compile("(?:spark://)?([^:,/]+):([0-9]+)");
    private static final int REACH_MILLIS = 3000;
    private static final long POLL_MILLIS = 100;
    private static final double NANOS = 1e9;
    private static final double TELL_SECONDS = 15;
    /** Spark needs these of the JDK. */
    private static final String OPENS = Stream.of(
                    "java.nio", "java.lang", "java.lang.invoke", "java.util", "sun.nio.ch")
            .map(name -> "--add-opens=java.base/" + name + "=ALL-UNNAMED")
            .collect(Collectors.joining(" "));

    private ClusterContext() {}

    /**
     * Connects.
     *
     * @param master address of the cluster; empty for the one that the settings name
     * @param settings of Spark, by name; they go before ours
     * @param patienceSeconds how long to wait for a first executor
     * @throws ClusterFailure when there is no such cluster, or it gives no executor
     */
    static JavaSparkContext open(String master, Map<String, String> settings, int patienceSeconds) {
        SparkConf conf = configuration(master, settings);
        String address = conf.get(MASTER);
        mustBeReachable(address);
        if (!isLocal(address)) {
            shipOwnJars(conf);
        }
        JavaSparkContext spark;
        try {
            spark = new JavaSparkContext(conf);
        } catch (RuntimeException thrown) {
            throw ClusterFailure.ofSpark(thrown);
        }
        if (!isLocal(address) && !hasExecutor(spark, patienceSeconds)) {
            spark.stop();
            throw ClusterFailure.cluster(
                    address + " gave no executor within " + patienceSeconds + " s",
                    "start a worker, or end other applications that hold its cores and memory");
        }
        return spark;
    }

    private static SparkConf configuration(String master, Map<String, String> settings) {
        SparkConf conf = new SparkConf().setIfMissing("spark.app.name", "tableweather");
        if (!master.isEmpty()) {
            conf.setMaster(master);
        }
        settings.forEach(conf::set);
        if (!conf.contains(MASTER)) {
            throw ClusterFailure.usage(
                    "no cluster is named", "give its address: --spark spark://HOST:7077, or local[2]");
        }
        return conf.setIfMissing("spark.ui.enabled", "false").setIfMissing("spark.executor.extraJavaOptions", OPENS);
    }

    /** Ours go before a distribution's own, older Parquet; jars that spark-submit was given stay. */
    private static void shipOwnJars(SparkConf conf) {
        conf.setIfMissing("spark.executor.userClassPathFirst", "true");
        if (!conf.contains(JARS)) {
            conf.setJars(ownJars().toArray(String[]::new));
        }
    }

    static boolean isLocal(String master) {
        return master.equals("local") || master.startsWith("local[");
    }

    /** Spark itself would ask for a minute before it gives up. */
    private static void mustBeReachable(String master) {
        if (!master.startsWith("spark://")) {
            return;
        }
        Matcher addresses = STANDALONE.matcher(master);
        boolean any = false;
        while (addresses.find()) {
            any = true;
            try (Socket socket = new Socket()) {
                socket.connect(
                        new InetSocketAddress(addresses.group(1), Integer.parseInt(addresses.group(2))), REACH_MILLIS);
                return;
            } catch (IOException | IllegalArgumentException unreachable) {
                // another one may answer
            }
        }
        throw any
                ? ClusterFailure.cluster("no cluster answers at " + master, "start its master, or mend the address")
                : ClusterFailure.usage(master + " is no address", "write it like spark://HOST:7077");
    }

    private static boolean hasExecutor(JavaSparkContext spark, int patienceSeconds) {
        long start = System.nanoTime();
        boolean told = false;
        while (spark.sc().statusTracker().getExecutorInfos().length < 2) { // the driver is one
            double seconds = (System.nanoTime() - start) / NANOS;
            if (seconds > patienceSeconds) {
                return false;
            }
            if (!told && seconds > TELL_SECONDS) {
                told = true;
                System.err.println("waiting for a first executor; end with Ctrl-C");
            }
            try {
                Thread.sleep(POLL_MILLIS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return false;
            }
        }
        return true;
    }

    /** The jar of this class and those in {@code lib} beside it. */
    private static List<String> ownJars() {
        List<String> jars = new ArrayList<>();
        try {
            Path own = new File(ClusterContext.class
                            .getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toPath();
            jars.add(own.toString());
            Path lib = own.resolveSibling("lib");
            if (!own.toString().endsWith(".jar") || !Files.isDirectory(lib)) {
                throw ClusterFailure.fault(
                        "these classes lie in no jar with its lib folder: executors cannot be given them",
                        "start through analyzers/cluster/bin/tableweather-cluster");
            }
            try (DirectoryStream<Path> beside = Files.newDirectoryStream(lib, "*.jar")) {
                beside.forEach(jar -> jars.add(jar.toString()));
            }
        } catch (URISyntaxException | IOException e) {
            throw new UncheckedIOException(new IOException(e));
        }
        return jars;
    }
}
