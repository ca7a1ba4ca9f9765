package org.tableweather.server.analysis;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import org.jboss.logging.Logger;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.server.plugin.Plugins;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** The analyzers of this server, its own and those of plugins: found once, when it starts. */
@Startup
@ApplicationScoped
class Analyzers {
    private static final Logger LOG = Logger.getLogger(Analyzers.class);

    private final AnalyzerCatalogue catalogue;

    Analyzers(Plugins plugins) {
        List<Analyzer<?>> all = new ArrayList<>(AnalyzerCatalogue.discover().all());
        all.addAll(plugins.beside(
                all.stream().map(analyzer -> analyzer.info().id()).toList()));
        this.catalogue = AnalyzerCatalogue.of(all);
        LOG.infof(
                "analyzers: %s",
                infos().stream().map(info -> info.id() + " " + info.version()).collect(Collectors.joining(", ")));
    }

    Collection<Analyzer<?>> all() {
        return catalogue.all();
    }

    List<AnalyzerInfo> infos() {
        return catalogue.all().stream().<AnalyzerInfo>map(Analyzer::info).toList();
    }

    /** The analyzer of this id; refused when there is none. */
    Analyzer<?> find(String id) {
        return catalogue
                .find(id)
                .orElseThrow(() -> new Refusal(
                        ErrorCode.NOT_FOUND,
                        "analyzer " + id + " does not exist: GET /api/v1/analyzers lists them, such as "
                                + infos().stream().map(AnalyzerInfo::id).collect(Collectors.joining(", "))));
    }
}
