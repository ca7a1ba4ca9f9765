package org.tableweather.server.guide;

import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.tableweather.schema.dictionary.DataDictionary;
import org.tableweather.schema.reference.Reference;
import org.tableweather.schema.reference.References;
import org.tableweather.server.web.KnownParameters;

/** What a newcomer reads: the way to a contribution, every check, every source, every field, the cautions. */
@Path("/")
@Produces("text/html;charset=UTF-8")
class GuidePages {

    record HowToContribute() implements TemplateInstance {}

    record ChecksPage(int count, List<CheckGroupView> groups) implements TemplateInstance {}

    record SourcesPage(List<SourceView> sources) implements TemplateInstance {}

    record DictionaryPage(List<DataDictionary.Section> sections) implements TemplateInstance {}

    record CautionsPage(CautionsView view) implements TemplateInstance {}

    /**
     * A source as a page shows it.
     *
     * @param key as checks and figures cite it
     * @param kind standard, paper ... in words
     * @param citation in one line
     * @param link address of the publication; empty when there is none
     * @param note what was seen of it; empty for nothing
     */
    record SourceView(String key, String kind, String citation, String link, String note) {

        static SourceView of(Reference reference) {
            return new SourceView(
                    reference.key(),
                    reference.kind().replace('-', ' '),
                    reference.citation(),
                    reference.doi().map(doi -> "https://doi.org/" + doi).orElse(""),
                    reference.note().orElse(""));
        }
    }

    @GET
    @Path("how-to-contribute")
    @Operation(hidden = true)
    public TemplateInstance howToContribute(@Context UriInfo uri) {
        KnownParameters.only(uri);
        return new HowToContribute();
    }

    @GET
    @Path("checks")
    @Operation(hidden = true)
    public TemplateInstance checks(@Context UriInfo uri) {
        KnownParameters.only(uri);
        List<CheckGroupView> groups = CheckGroupView.all();
        return new ChecksPage(
                groups.stream().mapToInt(group -> group.checks().size()).sum(), groups);
    }

    @GET
    @Path("sources")
    @Operation(hidden = true)
    public TemplateInstance sources(@Context UriInfo uri) {
        KnownParameters.only(uri);
        return new SourcesPage(References.all().stream().map(SourceView::of).toList());
    }

    @GET
    @Path("dictionary")
    @Operation(hidden = true)
    public TemplateInstance dictionary(@Context UriInfo uri) {
        KnownParameters.only(uri);
        return new DictionaryPage(DataDictionary.sections());
    }

    @GET
    @Path("cautions")
    @Operation(hidden = true)
    public TemplateInstance cautions(@Context UriInfo uri) {
        KnownParameters.only(uri, CautionsView.PARAMETERS);
        return new CautionsPage(CautionsView.of(uri.getQueryParameters()));
    }
}
