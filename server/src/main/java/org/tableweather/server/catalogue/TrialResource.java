package org.tableweather.server.catalogue;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.tableweather.server.web.ETags;
import org.tableweather.server.web.Form;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Page;

/** Trials over HTTP. */
@Path("/api/v1/trials")
@Tag(name = "catalogue")
class TrialResource {
    private static final List<String> CSV_HEADER = Stream.concat(
                    Stream.of("room", "session_id", "session_key", "ordinal"),
                    TrialColumn.all().stream().map(TrialColumn::sqlName))
            .toList();

    private static final int LEAST_AT_ONCE = 4000;
    private static final int PAGES_AT_ONCE = 4;
    private static final int EXPORTED_AT_ONCE = 50_000;

    private final Trials trials;
    private final Catalogue catalogue;

    TrialResource(Trials trials, Catalogue catalogue) {
        this.trials = trials;
        this.catalogue = catalogue;
    }

    @GET
    @Produces({MediaType.APPLICATION_JSON, Form.CSV_TYPE})
    @Operation(
            summary = "Published trials, by session and position in the file",
            description = "JSON gives one page; CSV without a limit gives everything, as a stream.",
            operationId = "trials")
    public Response list(@Context UriInfo uri, @Context Request request) {
        KnownParameters.only(uri, CatalogueFilter.PARAMETERS);
        var query = uri.getQueryParameters();
        CatalogueFilter filter = CatalogueFilter.of(query);
        Trials.Position after = query.containsKey("after") ? position(query.getFirst("after")) : Trials.Position.START;
        int limit = Page.limit(query.getFirst("limit"));
        Form form = Form.of(request, query.getFirst("format"));
        long csvRows = query.containsKey("limit") ? limit : Long.MAX_VALUE;
        return ETags.unlessHeld(
                request,
                new EntityTag(catalogue.state() + form),
                () -> form == Form.CSV
                        ? Response.ok(csv(filter, after, csvRows), form.type())
                        : Response.ok(page(filter, after, limit).body("trials"), form.type()));
    }

    private Page<FoundTrial> page(CatalogueFilter filter, Trials.Position after, int limit) {
        List<FoundTrial> rows = new ArrayList<>();
        try {
            trials.read(filter, after, Math.max(LEAST_AT_ONCE, PAGES_AT_ONCE * limit), trial -> {
                rows.add(trial);
                return rows.size() <= limit;
            });
        } catch (IOException e) {
            throw new UncheckedIOException("a list can be added to", e);
        }
        return Page.of(rows, limit, row -> row.session() + "." + row.ordinal());
    }

    private StreamingOutput csv(CatalogueFilter filter, Trials.Position after, long rows) {
        return CsvBody.of(CSV_HEADER, csv -> {
            long[] left = {rows};
            trials.read(filter, after, EXPORTED_AT_ONCE, trial -> {
                csv.writeRecord(cells(trial));
                return --left[0] > 0;
            });
        });
    }

    private static List<String> cells(FoundTrial trial) {
        List<String> cells = new ArrayList<>(CSV_HEADER.size());
        cells.add(trial.room());
        cells.add(Integer.toString(trial.session()));
        cells.add(trial.sessionKey());
        cells.add(Integer.toString(trial.ordinal()));
        for (TrialColumn column : TrialColumn.all()) {
            Object value = trial.values().get(column.jsonName());
            cells.add(value == null ? "" : value.toString());
        }
        return cells;
    }

    private static Trials.Position position(String cursor) {
        String key = Page.key(cursor);
        if (!key.matches("[0-9]{1,9}[.][0-9]{1,9}")) {
            throw Page.badCursor(cursor);
        }
        String[] parts = key.split("[.]");
        return new Trials.Position(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]));
    }
}
