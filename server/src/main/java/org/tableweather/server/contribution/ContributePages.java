package org.tableweather.server.contribution;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.tableweather.server.accounts.Caller;
import org.tableweather.server.accounts.Callers;
import org.tableweather.server.accounts.Scope;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Refusal;

/** Handing over a folder in the browser: first what the checks find, then the contribution. */
@Path("/contribute")
@Produces(ContributePages.HTML)
class ContributePages {
    static final String HTML = "text/html;charset=UTF-8";

    private final ArchiveChecks checks;
    private final Incoming incoming;
    private final Contributions contributions;
    private final Callers callers;
    private final Senders senders;
    private final ObjectMapper json;
    private final long maxMiB;

    ContributePages(
            ArchiveChecks checks,
            Incoming incoming,
            Contributions contributions,
            Callers callers,
            Senders senders,
            ObjectMapper json,
            @ConfigProperty(name = "tableweather.checks.max-bytes") long maxBytes) {
        this.checks = checks;
        this.incoming = incoming;
        this.contributions = contributions;
        this.callers = callers;
        this.senders = senders;
        this.json = json;
        this.maxMiB = maxBytes >> 20;
    }

    record ContributePage(Optional<HandOver> done, long maxMiB) implements TemplateInstance {}

    @GET
    @Operation(hidden = true)
    public TemplateInstance form(@Context UriInfo uri) {
        KnownParameters.only(uri);
        return new ContributePage(Optional.empty(), maxMiB);
    }

    @POST
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @Operation(hidden = true)
    public Response handOver(
            @RestForm("archive") FileUpload archive,
            @RestForm("token") String token,
            @RestForm("action") String action,
            @Context UriInfo uri)
            throws IOException {
        KnownParameters.only(uri);
        HandOver done = done(Optional.ofNullable(archive), Optional.ofNullable(token), "contribute".equals(action));
        return Response.status(done.status())
                .type(HTML)
                .header("Cache-Control", "no-store")
                .entity(new ContributePage(Optional.of(done), maxMiB).render())
                .build();
    }

    private HandOver done(Optional<FileUpload> chosen, Optional<String> token, boolean keep) throws IOException {
        if (chosen.isEmpty() || chosen.get().size() == 0) {
            return HandOver.problem(
                    "No file was chosen",
                    "Choose the .zip of a contribution folder, then try again.",
                    ErrorCode.BAD_REQUEST.status());
        }
        try (InputStream archive = Files.newInputStream(chosen.get().uploadedFile())) {
            return keep ? contributed(token.map(String::strip).orElse(""), archive) : checked(archive);
        } catch (Refusal refusal) {
            return HandOver.problem(
                    refusal.code().title(), sentence(refusal), refusal.code().status());
        }
    }

    private HandOver checked(InputStream archive) throws IOException {
        return HandOver.checked(HandOverReport.of(
                json.valueToTree(checks.check(senders.current(), archive).report())));
    }

    private HandOver contributed(String token, InputStream archive) throws IOException {
        if (token.isEmpty()) {
            return HandOver.problem(
                    "The token is missing",
                    "Type the token that the operator of this server gave you; without one you can still have the folder"
                            + " checked.",
                    ErrorCode.NOT_AUTHENTICATED.status());
        }
        Caller caller = callers.byToken(token, Scope.CONTRIBUTE, senders.address());
        Contributions.Outcome outcome = contributions.take(caller, incoming.take(archive));
        HandOverReport report = report(outcome.report());
        return switch (outcome.contribution().state()) {
            case REFUSED -> HandOver.refused(report, ErrorCode.CONTRIBUTION_REFUSED.status());
            case WITHDRAWN ->
                HandOver.problem(
                        ErrorCode.WRONG_STATE.title(),
                        "This very folder was contributed before and taken back. Change its title to contribute it anew.",
                        ErrorCode.WRONG_STATE.status());
            default -> HandOver.contributed(outcome, report);
        };
    }

    private HandOverReport report(String text) {
        try {
            return HandOverReport.of(json.readTree(text));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a kept report is JSON", e);
        }
    }

    private static String sentence(Refusal refusal) {
        String words = refusal.getMessage();
        return Character.toUpperCase(words.charAt(0)) + words.substring(1) + ".";
    }
}
