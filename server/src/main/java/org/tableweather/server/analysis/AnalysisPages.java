package org.tableweather.server.analysis;

import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.tableweather.server.catalogue.Catalogue;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.KnownParameters;

/** The first page: the pooled curve of the shot with the most trials. */
@Path("/")
class AnalysisPages {
    private static final String SHOWN = "rebound-humidity";

    private final Analyses analyses;
    private final Catalogue catalogue;
    private volatile Rendered latest = new Rendered("", "");

    AnalysisPages(Analyses analyses, Catalogue catalogue) {
        this.analyses = analyses;
        this.catalogue = catalogue;
    }

    record FirstPage(CurvePageView view) implements TemplateInstance {}

    /** A page, and the state of the catalogue that it shows. */
    private record Rendered(String state, String html) {}

    @GET
    @Produces("text/html;charset=UTF-8")
    @Operation(hidden = true)
    public Response firstPage(@Context UriInfo uri, @Context Request request) {
        KnownParameters.only(uri);
        String state = catalogue.state();
        return ETags.unlessHeld(request, new EntityTag(state), () -> Response.ok(html(state)));
    }

    /** Drawn once for each state of the catalogue. */
    private String html(String state) {
        Rendered rendered = latest;
        if (!rendered.state().equals(state)) {
            rendered = new Rendered(state, new FirstPage(CurvePageView.of(analyses.run(SHOWN, Map.of()))).render());
            latest = rendered;
        }
        return rendered.html();
    }
}
