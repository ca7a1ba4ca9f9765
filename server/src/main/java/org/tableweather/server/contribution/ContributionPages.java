package org.tableweather.server.contribution;

import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.UriInfo;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.tableweather.server.catalogue.PublishedSession;
import org.tableweather.server.catalogue.PublishedSessions;
import org.tableweather.server.web.Address;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Page;
import org.tableweather.server.web.Words;

/** Contributions for people: who handed over what, and what the checks say of it. */
@Path("/contributions")
@Produces("text/html;charset=UTF-8")
class ContributionPages {
    private static final int SESSIONS_SHOWN = 200;

    private final Register register;
    private final PublishedSessions sessions;

    ContributionPages(Register register, PublishedSessions sessions) {
        this.register = register;
        this.sessions = sessions;
    }

    /**
     * All states, to choose from.
     *
     * @param name of the state
     * @param chosen whether the list is limited to it
     */
    record StateChoice(String name, boolean chosen) {}

    /**
     * A session of a contribution.
     *
     * @param key its name over all contributions
     * @param address of its page; empty when it is not published
     * @param trials attempts
     */
    record SessionLine(String key, String address, String trials) {}

    record ContributionsPage(List<ContributionLine> rows, List<StateChoice> states, String state, String next)
            implements TemplateInstance {}

    record ContributionPage(
            ContributionLine one, Optional<ReportView> report, List<SessionLine> held, String moreHeld, boolean open)
            implements TemplateInstance {}

    @GET
    @Operation(hidden = true)
    public TemplateInstance all(
            @QueryParam("state") String state, @QueryParam("after") String after, @Context UriInfo uri) {
        KnownParameters.only(uri, "state", "after");
        Optional<State> only =
                Optional.ofNullable(state).filter(text -> !text.isEmpty()).map(ContributionResource::state);
        long before = after == null ? Long.MAX_VALUE : Page.number(after);
        Page<ContributionView> page = Page.of(
                register.list(only, Optional.empty(), before, Page.DEFAULT_LIMIT + 1),
                Page.DEFAULT_LIMIT,
                row -> Long.toString(row.id()));
        String chosen = only.map(State::schemaName).orElse("");
        return new ContributionsPage(
                page.items().stream().map(ContributionLine::of).toList(),
                Arrays.stream(State.values())
                        .map(State::schemaName)
                        .map(name -> new StateChoice(name, name.equals(chosen)))
                        .toList(),
                chosen,
                page.next().orElse(""));
    }

    @GET
    @Path("/{id: [0-9]{1,18}}")
    @Operation(hidden = true)
    public TemplateInstance one(@PathParam("id") long id, @Context UriInfo uri) {
        KnownParameters.only(uri);
        ContributionView view = register.one(id);
        List<PublishedSession> held = sessions.ofContributions(List.of(id));
        boolean published = view.state() == State.ACCEPTED;
        return new ContributionPage(
                ContributionLine.of(view),
                register.reportIfAny(id).map(ReportView::of),
                held.stream()
                        .limit(SESSIONS_SHOWN)
                        .map(session -> line(session, published))
                        .toList(),
                held.size() > SESSIONS_SHOWN ? Words.counted(held.size() - SESSIONS_SHOWN, "session") : "",
                register.isOpen(id));
    }

    private static SessionLine line(PublishedSession session, boolean published) {
        return new SessionLine(
                session.sessionKey(),
                published ? Address.of("/sessions/", session.sessionKey()) : "",
                Words.count(session.trials()));
    }
}
