package org.tableweather.server.catalogue;

import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.tableweather.schema.equipment.PublishedTable;
import org.tableweather.schema.equipment.PublishedTables;
import org.tableweather.schema.shots.ShotCatalogue;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Page;
import org.tableweather.server.web.Refusal;

/** What there is, for people: rooms and their sessions, shots with their diagrams. */
@Path("/")
@Produces("text/html;charset=UTF-8")
class CataloguePages {
    private static final String REFERENCE_TABLE = "pool-9ft";

    private final Rooms rooms;
    private final Sessions sessions;
    private final ShotCounts shots;
    private final SavedQueries queries;

    CataloguePages(Rooms rooms, Sessions sessions, ShotCounts shots, SavedQueries queries) {
        this.rooms = rooms;
        this.sessions = sessions;
        this.shots = shots;
        this.queries = queries;
    }

    record RoomsPage(RoomsPageView view) implements TemplateInstance {}

    record RoomPage(RoomPageView view) implements TemplateInstance {}

    record ShotsPage(List<ShotGroupView> groups) implements TemplateInstance {}

    record ShotPage(ShotPageView view) implements TemplateInstance {}

    @GET
    @Path("rooms")
    @Operation(hidden = true)
    public TemplateInstance rooms(@Context UriInfo uri) {
        KnownParameters.only(uri, CatalogueFilter.PARAMETERS);
        var query = uri.getQueryParameters();
        String after = query.containsKey("after") ? Page.key(query.getFirst("after")) : "";
        Page<RoomView> page = Page.of(
                rooms.list(CatalogueFilter.of(queries.applied(query)), after, Page.DEFAULT_LIMIT + 1),
                Page.DEFAULT_LIMIT,
                RoomView::key);
        return new RoomsPage(RoomsPageView.of(page, query));
    }

    @GET
    @Path("rooms/{key: .+}")
    @Operation(hidden = true)
    public TemplateInstance room(@PathParam("key") String key, @Context UriInfo uri) {
        KnownParameters.only(uri, "after");
        MultivaluedHashMap<String, String> query = new MultivaluedHashMap<>();
        query.putSingle("room", key);
        CatalogueFilter ofRoom = CatalogueFilter.of(query);
        RoomView room = rooms.list(ofRoom, "", 1).stream()
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        ErrorCode.NOT_FOUND,
                        "room " + key + " has no published session: the page of rooms lists those that have"));
        String after = uri.getQueryParameters().getFirst("after");
        Page<SessionView> page = Page.of(
                sessions.list(ofRoom, after == null ? 0 : Page.number(after), Page.DEFAULT_LIMIT + 1),
                Page.DEFAULT_LIMIT,
                row -> Integer.toString(row.id()));
        return new RoomPage(RoomPageView.of(room, page));
    }

    @GET
    @Path("shots")
    @Operation(hidden = true)
    public TemplateInstance shots(@Context UriInfo uri) {
        KnownParameters.only(uri);
        return new ShotsPage(ShotGroupView.all(shots.all()));
    }

    @GET
    @Path("shots/{id}")
    @Operation(hidden = true)
    public TemplateInstance shot(@PathParam("id") String id, @Context UriInfo uri) {
        KnownParameters.only(uri, "table");
        String table =
                Optional.ofNullable(uri.getQueryParameters().getFirst("table")).orElse(REFERENCE_TABLE);
        PublishedTable size = PublishedTables.byId(table)
                .orElseThrow(() -> new Refusal(
                        ErrorCode.BAD_REQUEST,
                        "table = " + table + " is no table of a published size: the page of the shot lists them"));
        List<ShotCounts.ShotCount> counts =
                shots.all().stream().filter(count -> count.shot().equals(id)).toList();
        if (counts.isEmpty() && ShotCatalogue.byId(id).isEmpty()) {
            throw new Refusal(
                    ErrorCode.NOT_FOUND,
                    "there is no shot " + id + ": the page of shots lists the catalogue and what was contributed");
        }
        return new ShotPage(ShotPageView.of(id, ShotCatalogue.byId(id), size, counts));
    }
}
