package org.tableweather.server.contribution;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.Callable;
import java.util.concurrent.Semaphore;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.context.ManagedExecutor;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.server.accounts.AuditTrail;
import org.tableweather.server.accounts.Caller;
import org.tableweather.server.catalogue.Catalogue;
import org.tableweather.server.web.RangedFile;

/**
 * Takes archives in. One transaction records that an archive was received, a second one judges it; a lock on the digest
 * makes two that come at once wait for each other, so that the later finds the earlier's result.
 */
@ApplicationScoped
class Contributions {
    /** Reading a large archive takes its time; the database is not blocked by it. */
    private static final Duration LONGEST_JUDGEMENT = Duration.ofHours(2);

    private final Judgement judgement;
    private final Archives archives;
    private final Catalogue catalogue;
    private final AuditTrail audit;
    private final Faults faults;
    private final DataSource database;
    private final ObjectMapper json;
    private final ManagedExecutor executor;
    private final Clock clock;
    private final Acceptance acceptance;
    private final Object[] turns = Stream.generate(Object::new).limit(64).toArray();

    /** Judgements at a time: each keeps two threads and a connection busy. */
    private final Semaphore places =
            new Semaphore(Math.max(2, Runtime.getRuntime().availableProcessors() / 2), true);

    Contributions(
            Judgement judgement,
            Archives archives,
            Catalogue catalogue,
            AuditTrail audit,
            Faults faults,
            DataSource database,
            ObjectMapper json,
            ManagedExecutor executor,
            Clock clock,
            @ConfigProperty(name = "tableweather.acceptance") String acceptance) {
        this.judgement = judgement;
        this.archives = archives;
        this.catalogue = catalogue;
        this.audit = audit;
        this.faults = faults;
        this.database = database;
        this.json = json;
        this.executor = executor;
        this.clock = clock;
        this.acceptance = Acceptance.of(acceptance);
    }

    /**
     * What became of an archive.
     *
     * @param contribution as it stands now
     * @param report of the checks, as JSON; empty while it is being judged
     * @param fresh whether it was decided by this call
     */
    record Outcome(ContributionView contribution, String report, boolean fresh) {}

    /**
     * Puts an archive in its place, records it, judges it.
     *
     * @param caller whose contribution it is, if it is new
     */
    Outcome take(Caller caller, Incoming.Complete upload) throws IOException {
        synchronized (turn(upload.sha256())) {
            archives.store(upload.file(), upload.sha256());
            State before = inTransaction(() -> receive(caller, upload));
            faults.at(FaultPoint.RECEIVED);
            return before == State.RECEIVED ? judge(caller, upload.sha256()) : outcome(upload.sha256(), false);
        }
    }

    /** Goes on with what a server received before it was ended. */
    Outcome resume(Caller caller, String sha256) throws IOException {
        synchronized (turn(sha256)) {
            return judge(caller, sha256);
        }
    }

    /** The archive of one digest is moved, judged, and deleted when refused, by one thread at a time. */
    private Object turn(String sha256) {
        return turns[Math.floorMod(sha256.hashCode(), turns.length)];
    }

    private State receive(Caller caller, Incoming.Complete upload) {
        String sha256 = upload.sha256();
        lock(sha256);
        StoredContribution known =
                StoredContribution.<StoredContribution>find("sha256", sha256).firstResult();
        if (known == null) {
            known = new StoredContribution(sha256, upload.bytes(), caller.accountId(), Instant.now(clock));
            known.persistAndFlush();
            audit.record(caller, "contribution.received", "contribution " + known.id(), sha256);
        } else if (known.state() == State.REFUSED) {
            known.receiveAgain(caller.accountId(), Instant.now(clock));
            audit.record(caller, "contribution.received", "contribution " + known.id(), sha256 + ", again");
        }
        return known.state();
    }

    private Outcome judge(Caller caller, String sha256) throws IOException {
        places.acquireUninterruptibly();
        try {
            boolean decided = QuarkusTransaction.requiringNew()
                    .timeout((int) LONGEST_JUDGEMENT.toSeconds())
                    .call(() -> pass(caller, sha256));
            executor.execute(catalogue::settle);
            return answered(sha256, decided);
        } catch (RuntimeException e) {
            if (e.getCause() instanceof RefusedByChecks refused) {
                faults.at(FaultPoint.BEFORE_REFUSAL);
                return answered(sha256, inTransaction(() -> refuse(caller, sha256, refused.report())));
            }
            throw e;
        } finally {
            places.release();
        }
    }

    private boolean pass(Caller caller, String sha256) throws IOException, SQLException, RefusedByChecks {
        lock(sha256);
        StoredContribution contribution = find(sha256);
        if (contribution.state() != State.RECEIVED) {
            return false;
        }
        try (Connection connection = database.getConnection()) {
            Judgement.Passed passed = judgement.pass(connection, contribution);
            contribution.describe(passed.content());
            contribution.pass(passed.stored(), write(passed.report()), Instant.now(clock));
        }
        audit.record(caller, "contribution.checked", "contribution " + contribution.id(), sha256);
        if (acceptance == Acceptance.AUTOMATIC) {
            contribution.accept(Instant.now(clock));
            catalogue.publish(contribution.id());
            audit.record(caller, "contribution.accepted", "contribution " + contribution.id(), "automatically");
        }
        StoredContribution.flush();
        faults.at(FaultPoint.BEFORE_COMMIT);
        return true;
    }

    private boolean refuse(Caller caller, String sha256, CheckReport report) {
        lock(sha256);
        StoredContribution contribution = find(sha256);
        if (contribution.state() != State.RECEIVED) {
            return false;
        }
        contribution.refuse(write(report), Instant.now(clock));
        audit.record(caller, "contribution.refused", "contribution " + contribution.id(), sha256);
        return true;
    }

    private Outcome answered(String sha256, boolean fresh) throws IOException {
        Outcome outcome = outcome(sha256, fresh);
        if (outcome.contribution().state() == State.REFUSED) {
            archives.delete(sha256);
        }
        faults.at(FaultPoint.BEFORE_ANSWER);
        return outcome;
    }

    /** An archive in its place. */
    RangedFile archive(String sha256) {
        return new RangedFile(archives.path(sha256), ContributionResource.ZIP);
    }

    private Outcome outcome(String sha256, boolean fresh) {
        return inTransaction(() -> {
            StoredContribution contribution = find(sha256);
            return new Outcome(contribution.view(), contribution.report().orElse("null"), fresh);
        });
    }

    private static StoredContribution find(String sha256) {
        return StoredContribution.<StoredContribution>find("sha256", sha256)
                .firstResultOptional()
                .orElseThrow();
    }

    /** Held until the transaction ends; the same digest waits, others do not. */
    private void lock(String sha256) {
        try (Connection connection = database.getConnection();
                PreparedStatement lock =
                        connection.prepareStatement("SELECT pg_advisory_xact_lock(hashtextextended(?, 0))")) {
            lock.setString(1, sha256);
            lock.execute();
        } catch (SQLException e) {
            throw new IllegalStateException("the contribution cannot be locked", e);
        }
    }

    private static <T> T inTransaction(Callable<T> work) {
        return QuarkusTransaction.requiringNew().call(work);
    }

    private String write(CheckReport report) {
        try {
            return json.writeValueAsString(report);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("a report is made of plain records", e);
        }
    }
}
