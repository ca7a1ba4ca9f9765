package org.tableweather.analyzers.host.plugin;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.ServiceConfigurationError;
import java.util.ServiceLoader;
import java.util.Set;
import java.util.regex.Pattern;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;

/** The analyzers in a jar from outside. */
public final class PluginJar {
    private static final String ENTRY = "META-INF/services/" + Analyzer.class.getName();
    private static final Pattern ID = Pattern.compile("[a-z][a-z0-9]*(-[a-z0-9]+)*");
    private static final String ASK_THE_AUTHOR = "tell the jar's author";

    private PluginJar() {}

    /** SHA-256 of a jar, hex: what an operator pins. */
    public static String sha256(Path jar) throws IOException, PluginRefused {
        return JarBytes.read(jar).sha256();
    }

    /**
     * The jar's analyzers, in this process: they have its rights. What they throw, or return against the contract, comes
     * as a {@link PluginFailure} that names jar and analyzer.
     *
     * @param jar which; it sees the SPI, the schema and the JDK alone
     * @throws PluginRefused when it is no jar, holds no analyzer, lacks classes, or an analyzer of it cannot be made
     * @throws IOException when it cannot be read
     */
    public static List<Analyzer<?>> analyzers(Path jar) throws IOException, PluginRefused {
        return analyzers(JarBytes.read(jar));
    }

    static List<Analyzer<?>> analyzers(JarBytes jar) throws PluginRefused {
        Map<String, byte[]> entries = jar.entries();
        if (!entries.containsKey(ENTRY)) {
            throw new PluginRefused(
                    jar.name() + " holds no analyzer: it has no " + ENTRY,
                    "name a jar with an analyzer, or add that file with the analyzer's class name");
        }
        ClassLoader loader = new JarClassLoader(jar.name(), entries, new SharedTypes(PluginJar.class.getClassLoader()));
        List<Analyzer<?>> found = new ArrayList<>();
        try {
            for (Analyzer<?> analyzer : ServiceLoader.load(Analyzer.class, loader)) {
                found.add(guarded(jar.name(), analyzer));
            }
        } catch (PluginRefused refused) {
            throw refused;
        } catch (Throwable thrown) {
            throw cannotBeMade(jar.name(), thrown);
        }
        if (found.isEmpty()) {
            throw new PluginRefused(
                    jar.name() + " holds no analyzer: " + ENTRY + " names none",
                    "write the analyzer's class name into it");
        }
        mustDiffer(jar.name(), found);
        return found;
    }

    private static <S> Analyzer<S> guarded(String jarName, Analyzer<S> analyzer) throws PluginRefused {
        String named = jarName + ": " + analyzer.getClass().getName();
        AnalyzerInfo info = analyzer.info();
        if (info == null || analyzer.summaryType() == null) {
            throw new PluginRefused(named + " returns null from info() or summaryType()", ASK_THE_AUTHOR);
        }
        mustBeNamed(named, info);
        return new GuardedAnalyzer<>(jarName, analyzer, info);
    }

    static void mustBeNamed(String named, AnalyzerInfo info) throws PluginRefused {
        if (info.id() == null || !ID.matcher(info.id()).matches()) {
            throw new PluginRefused(
                    named + " calls itself '" + PluginFailure.shortened(String.valueOf(info.id()))
                            + "': an id is lower-case words with dashes between",
                    ASK_THE_AUTHOR);
        }
        if (info.version() == null || info.summaryVersion() == null) {
            throw new PluginRefused(named + " states no version, or none of its summaries", ASK_THE_AUTHOR);
        }
    }

    private static PluginRefused cannotBeMade(String jarName, Throwable thrown) {
        Throwable root =
                thrown instanceof ServiceConfigurationError && thrown.getCause() != null ? thrown.getCause() : thrown;
        if (root instanceof NoClassDefFoundError || root instanceof ClassNotFoundException) {
            return new PluginRefused(
                    jarName + " lacks the class "
                            + String.valueOf(root.getMessage()).replace('/', '.'),
                    "put it into the jar: a plugin sees the SPI, the schema and the JDK alone",
                    thrown);
        }
        return new PluginRefused(
                jarName + ": its analyzer cannot be made: " + PluginFailure.inWords(root), ASK_THE_AUTHOR, thrown);
    }

    private static void mustDiffer(String jarName, List<Analyzer<?>> analyzers) throws PluginRefused {
        Set<String> ids = new HashSet<>();
        for (Analyzer<?> analyzer : analyzers) {
            if (!ids.add(analyzer.info().id())) {
                throw new PluginRefused(
                        jarName + " holds two analyzers that call themselves "
                                + analyzer.info().id(),
                        ASK_THE_AUTHOR);
            }
        }
    }
}
