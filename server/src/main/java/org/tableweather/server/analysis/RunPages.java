package org.tableweather.server.analysis;

import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Page;
import org.tableweather.server.web.Refusal;
import org.tableweather.server.web.SameOrigin;

/** Runs for people: start one, watch it, cancel it, set two beside each other. */
@Path("/runs")
@Produces("text/html;charset=UTF-8")
class RunPages {
    private static final int SHOWN = 50;
    private static final String ANALYZER = "analyzer";
    private static final String ONE = "/{id: [0-9a-f]{64}}";

    private final Runs runs;
    private final KeptRuns kept;
    private final Analyzers analyzers;
    private final KnownValues known;
    private final RunCallers callers;

    RunPages(Runs runs, KeptRuns kept, Analyzers analyzers, KnownValues known, RunCallers callers) {
        this.runs = runs;
        this.kept = kept;
        this.analyzers = analyzers;
        this.known = known;
        this.callers = callers;
    }

    record RunsPage(List<RunLine> rows, List<AnalyzerInfo> analyzers, String next, boolean two)
            implements TemplateInstance {}

    record NewRunPage(AnalyzerInfo analyzer, QuestionForm form) implements TemplateInstance {}

    record RunPage(RunPageView view, Optional<AnswerView> answer) implements TemplateInstance {}

    record ComparisonPage(RunComparison view) implements TemplateInstance {}

    @GET
    @Operation(hidden = true)
    public TemplateInstance all(@Context UriInfo uri) {
        KnownParameters.only(uri, "after");
        String after = uri.getQueryParameters().getFirst("after");
        KeptRuns.Position position = after == null ? KeptRuns.Position.START : RunListResource.position(after);
        Page<KeptRuns.Listed> page =
                Page.of(kept.list("", position, SHOWN + 1), SHOWN, run -> run.requestedAt() + " " + run.id());
        List<RunLine> rows = page.items().stream().map(RunLine::of).toList();
        return new RunsPage(
                rows,
                analyzers.infos(),
                page.next().orElse(""),
                rows.stream().filter(RunLine::done).count() > 1);
    }

    @GET
    @Path("/new")
    @Operation(hidden = true)
    public TemplateInstance form(@Context UriInfo uri) {
        Map<String, String> chosen = Chosen.ofForm(uri.getQueryParameters());
        AnalyzerInfo info = analyzers.find(chosen.getOrDefault(ANALYZER, "")).info();
        return new NewRunPage(info, QuestionForm.of("/runs", info, known.of(info.id()), chosen));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Operation(hidden = true)
    public Response start(MultivaluedMap<String, String> form, @Context HttpHeaders headers) {
        SameOrigin.required(headers);
        Map<String, String> chosen = Chosen.ofForm(form);
        String analyzer = Optional.ofNullable(chosen.remove(ANALYZER))
                .orElseThrow(() ->
                        new Refusal(ErrorCode.BAD_REQUEST, "no analyzer is chosen: the page of analyses lists them"));
        return seeOther(runs.ask(new RunRequest(analyzer, chosen), callers.current()));
    }

    @GET
    @Path(ONE)
    @Operation(hidden = true)
    public Response one(@PathParam("id") String id, @Context UriInfo uri) {
        KnownParameters.only(uri);
        RunView run = runs.one(id);
        Optional<AnswerView> answer = run.result()
                .map(any -> AnswerView.of(Answer.kept(runs.result(id)).run(), run.parameters()));
        return Response.ok(new RunPage(RunPageView.of(run), answer))
                .header("Cache-Control", "no-store")
                .build();
    }

    @POST
    @Path(ONE + "/cancel")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Operation(hidden = true)
    public Response cancel(@PathParam("id") String id, @Context HttpHeaders headers) {
        SameOrigin.required(headers);
        return seeOther(runs.cancel(id, callers.current()));
    }

    @POST
    @Path(ONE + "/again")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Operation(hidden = true)
    public Response again(@PathParam("id") String id, @Context HttpHeaders headers) {
        SameOrigin.required(headers);
        return seeOther(runs.again(id, callers.current()));
    }

    private static Response seeOther(RunView run) {
        return Response.seeOther(URI.create("/runs/" + run.id())).build();
    }

    @GET
    @Path("/compare")
    @Operation(hidden = true)
    public TemplateInstance compare(@Context UriInfo uri) {
        KnownParameters.only(uri, "first", "second");
        String first = chosen(uri, "first");
        String second = chosen(uri, "second");
        return new ComparisonPage(RunComparison.of(
                first,
                Answer.kept(runs.result(first)).run(),
                second,
                Answer.kept(runs.result(second)).run()));
    }

    private static String chosen(UriInfo uri, String name) {
        return Optional.ofNullable(uri.getQueryParameters().getFirst(name))
                .filter(id -> !id.isEmpty())
                .orElseThrow(() -> new Refusal(
                        ErrorCode.BAD_REQUEST, "no " + name + " run is chosen: the page of runs lets you choose two"));
    }
}
