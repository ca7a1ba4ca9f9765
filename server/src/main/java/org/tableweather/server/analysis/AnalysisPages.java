package org.tableweather.server.analysis;

import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.KnownParameters;

/** Answers for people: the pooled curve first, one room beside the pool, and every other analyzer. */
@Path("/")
@Produces("text/html;charset=UTF-8")
class AnalysisPages {
    private static final String CURVE = "rebound-humidity";
    private static final String COMPARISON = "room-comparison";

    private final Runs runs;
    private final RunCallers callers;
    private final Analyzers analyzers;
    private final Answers answers;
    private final KnownValues known;

    AnalysisPages(Runs runs, RunCallers callers, Analyzers analyzers, Answers answers, KnownValues known) {
        this.runs = runs;
        this.callers = callers;
        this.analyzers = analyzers;
        this.answers = answers;
        this.known = known;
    }

    record AnswerPage(AnswerView view, QuestionForm form) implements TemplateInstance {}

    record AnalysesPage(List<AnalyzerInfo> analyzers) implements TemplateInstance {}

    @GET
    @Operation(hidden = true)
    public Response curve(@Context UriInfo uri, @Context Request request) {
        return answer("/", CURVE, uri, request);
    }

    @GET
    @Path("compare")
    @Operation(hidden = true)
    public Response compare(@Context UriInfo uri, @Context Request request) {
        return answer("/compare", COMPARISON, uri, request);
    }

    @GET
    @Path("analyses")
    @Operation(hidden = true)
    public TemplateInstance all(@Context UriInfo uri) {
        KnownParameters.only(uri);
        return new AnalysesPage(analyzers.infos());
    }

    @GET
    @Path("analyses/{id}")
    @Operation(hidden = true)
    public Response one(@PathParam("id") String id, @Context UriInfo uri, @Context Request request) {
        return answer("/analyses/" + id, analyzers.find(id).info().id(), uri, request);
    }

    private Response answer(String action, String analyzer, UriInfo uri, Request request) {
        Map<String, String> chosen = Chosen.ofForm(uri.getQueryParameters());
        String state = answers.state();
        String address = action + "?" + QueryText.of(chosen);
        EntityTag tag = new EntityTag(state + "-" + Integer.toHexString(address.hashCode()));
        Supplier<TemplateInstance> fresh = () -> page(action, analyzer, chosen);
        return ETags.unlessHeld(request, tag, () -> Response.ok(answers.page(state, address, fresh)));
    }

    private TemplateInstance page(String action, String analyzer, Map<String, String> chosen) {
        AnalysisRun run = runs.answer(analyzer, chosen, callers.current()).run();
        return new AnswerPage(
                action.equals("/") ? AnswerView.ofCurve(run, chosen) : AnswerView.of(run, chosen),
                QuestionForm.of(action, run.info(), known.of(analyzer), chosen));
    }
}
