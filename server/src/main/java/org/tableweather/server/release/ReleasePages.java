package org.tableweather.server.release;

import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.UriInfo;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.tableweather.release.ReleaseFolder;
import org.tableweather.release.Tombstone;
import org.tableweather.server.catalogue.PublishedSession;
import org.tableweather.server.web.Address;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Page;
import org.tableweather.server.web.Words;

/** Releases for people: what is in each, how it is cited, fetched and verified. */
@Path("/releases")
@Produces("text/html;charset=UTF-8")
class ReleasePages {
    private static final int ROOMS_SHOWN = 200;
    private static final String CITATION = "CITATION.txt";

    private final Releases releases;

    ReleasePages(Releases releases) {
        this.releases = releases;
    }

    /**
     * A release in the list.
     *
     * @param number of it
     * @param title in words
     * @param date of it
     * @param state where it stands
     * @param totals how much, in one line; why not, when it failed
     * @param frozen whether it is complete
     */
    record Line(int number, String title, String date, String state, String totals, boolean frozen) {

        static Line of(ReleaseView view) {
            StoredRelease release = view.release();
            return new Line(
                    release.number(),
                    release.title(),
                    release.date().toString(),
                    release.state().schemaName(),
                    view.totals()
                            .map(ReleasePageView::totals)
                            .orElse(release.failure().orElse("")),
                    release.state() == ReleaseState.FROZEN);
        }
    }

    /**
     * A room in a release.
     *
     * @param key of it
     * @param address of its page
     */
    record RoomLine(String key, String address) {}

    record ReleasesPage(List<Line> rows, String next) implements TemplateInstance {}

    record UnfinishedRelease(Line one) implements TemplateInstance {}

    record ReleasePage(
            ReleasePageView view,
            List<RoomLine> rooms,
            String moreRooms,
            String citation,
            List<Tombstone> tombstones,
            String server)
            implements TemplateInstance {}

    @GET
    @Operation(hidden = true)
    public TemplateInstance all(@QueryParam("after") String after, @Context UriInfo uri) {
        KnownParameters.only(uri, "after");
        long before = after == null ? Long.MAX_VALUE : Page.number(after);
        Page<ReleaseView> page = Page.of(
                releases.list(before, Page.DEFAULT_LIMIT + 1),
                Page.DEFAULT_LIMIT,
                row -> Integer.toString(row.release().number()));
        return new ReleasesPage(
                page.items().stream().map(Line::of).toList(), page.next().orElse(""));
    }

    @GET
    @Path("/{number: [0-9]{1,9}}")
    @Operation(hidden = true)
    public TemplateInstance one(@PathParam("number") int number, @Context UriInfo uri) throws IOException {
        KnownParameters.only(uri);
        ReleaseView release = releases.view(number);
        if (release.release().state() != ReleaseState.FROZEN) {
            return new UnfinishedRelease(Line.of(release));
        }
        ReleaseFolder folder = ReleaseFolder.open(releases.path(number));
        List<String> rooms = releases.sessions(number).stream()
                .map(PublishedSession::roomKey)
                .distinct()
                .sorted()
                .toList();
        return new ReleasePage(
                ReleasePageView.of(folder.manifest()),
                rooms.stream()
                        .limit(ROOMS_SHOWN)
                        .map(key -> new RoomLine(key, Address.of("/rooms/", key)))
                        .toList(),
                rooms.size() > ROOMS_SHOWN ? Words.counted(rooms.size() - ROOMS_SHOWN, "room") : "",
                Files.readString(folder.path().resolve(CITATION)).strip(),
                folder.tombstones(),
                uri.getBaseUri().toString().replaceAll("/$", ""));
    }
}
