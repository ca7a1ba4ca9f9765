package org.tableweather.server.analysis;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Supplier;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.ChartSize;
import org.tableweather.analyzers.host.ChartUnavailable;
import org.tableweather.analyzers.host.PlotChart;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** Plots to take away: as a drawing, a picture, or rows. */
@Path("/api/v1/analyses/{id}/plots/{plot: [a-z0-9-]+}.{form: svg|png|csv}")
@Tag(name = "analyses")
class PlotResource {
    private final Runs runs;
    private final RunCallers callers;

    PlotResource(Runs runs, RunCallers callers) {
        this.runs = runs;
        this.callers = callers;
    }

    @GET
    @Produces({"image/svg+xml", "image/png", "text/csv"})
    @Operation(
            summary = "A plot of an analysis as SVG, PNG or CSV",
            description =
                    "The analyzer's parameters are the query's. The rows of CSV: series, mark, x, y, lower, upper.",
            operationId = "plot")
    public Response plot(
            @PathParam("id") @Parameter(example = "rebound-humidity") String id,
            @PathParam("plot") @Parameter(example = "curve") String plot,
            @PathParam("form") @Parameter(example = "svg") String form,
            @Context UriInfo uri,
            @Context Request request) {
        AnalysisRun run = runs.answer(id, Chosen.of(uri.getQueryParameters()), callers.current())
                .run();
        byte[] body = body(run, find(run, plot), form);
        return ETags.unlessHeld(
                request,
                ETags.ofContent(body),
                () -> Response.ok(body, type(form))
                        .header(
                                "Content-Disposition",
                                "attachment; filename=\"" + id + "-" + plot + "." + form + "\""));
    }

    private static Plot find(AnalysisRun run, String wanted) {
        List<Plot> plots = drawn(() -> PlotChart.plots(run));
        return plots.stream()
                .filter(plot -> plot.id().equals(wanted))
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        ErrorCode.NOT_FOUND,
                        run.info().id() + " draws no " + wanted + ": it draws "
                                + String.join(", ", plots.stream().map(Plot::id).toList())));
    }

    private static byte[] body(AnalysisRun run, Plot plot, String form) {
        return switch (form) {
            case "svg" ->
                drawn(() -> PlotChart.svg(run, plot, ChartSize.page())).getBytes(StandardCharsets.UTF_8);
            case "png" -> drawn(() -> PlotChart.png(run, plot, ChartSize.page()));
            default -> PlotRows.csv(plot).getBytes(StandardCharsets.UTF_8);
        };
    }

    private static <T> T drawn(Supplier<T> drawing) {
        try {
            return drawing.get();
        } catch (ChartUnavailable e) {
            throw new Refusal(ErrorCode.NOT_FOUND, e.getMessage());
        }
    }

    private static String type(String form) {
        return switch (form) {
            case "svg" -> "image/svg+xml";
            case "png" -> "image/png";
            default -> "text/csv;charset=UTF-8";
        };
    }
}
