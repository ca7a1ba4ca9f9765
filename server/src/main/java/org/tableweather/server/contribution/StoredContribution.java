package org.tableweather.server.contribution;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Optional;
import org.tableweather.schema.record.Contribution;
import org.tableweather.server.catalogue.Intake;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** A contribution and its transitions: received, then checked, accepted or refused, then perhaps withdrawn. */
@Entity
@Table(name = "contribution")
class StoredContribution extends PanacheEntityBase {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    private Long id;

    private String sha256;
    private long bytes;

    @Column(name = "account_id")
    private long accountId;

    private String state;
    private String title;
    private String licence;
    private String contributor;
    private boolean invented;

    @Column(name = "exact_positions")
    private boolean exactPositions;

    private int rooms;
    private int sessions;
    private long trials;

    @Column(name = "received_at")
    private Instant receivedAt;

    @Column(name = "decided_at")
    private Instant decidedAt;

    @Column(name = "withdrawn_at")
    private Instant withdrawnAt;

    @Column(name = "withdrawal_reason")
    private String withdrawalReason;

    private String report;

    StoredContribution() {}

    StoredContribution(String sha256, long bytes, long accountId, Instant at) {
        this.sha256 = sha256;
        this.bytes = bytes;
        this.accountId = accountId;
        this.state = State.RECEIVED.schemaName();
        this.receivedAt = at;
    }

    /** A refused archive is sent again: it is judged anew, for the rules or its neighbours may have changed. */
    void receiveAgain(long byAccount, Instant at) {
        expect(State.REFUSED, "received again");
        state = State.RECEIVED.schemaName();
        accountId = byAccount;
        receivedAt = at;
        decidedAt = null;
        report = null;
    }

    void describe(Contribution content) {
        title = content.title().orElse(null);
        licence = content.licence();
        contributor = content.contributor().name();
        invented = content.invented().orElse(false);
    }

    void pass(Intake.Stored stored, String checkReport, Instant at) {
        expect(State.RECEIVED, "checked");
        state = State.CHECKED.schemaName();
        rooms = stored.rooms();
        sessions = stored.sessions();
        trials = stored.trials();
        exactPositions = stored.exactPositions();
        report = checkReport;
        decidedAt = at;
    }

    void accept(Instant at) {
        expect(State.CHECKED, "accepted");
        state = State.ACCEPTED.schemaName();
        decidedAt = at;
    }

    void refuse(String checkReport, Instant at) {
        expect(State.RECEIVED, "refused");
        state = State.REFUSED.schemaName();
        report = checkReport;
        decidedAt = at;
    }

    void withdraw(Instant at, String reason) {
        if (state() != State.CHECKED) {
            expect(State.ACCEPTED, "withdrawn");
        }
        state = State.WITHDRAWN.schemaName();
        withdrawnAt = at;
        withdrawalReason = reason.isEmpty() ? null : reason;
    }

    private void expect(State needed, String transition) {
        if (state() != needed) {
            throw new Refusal(
                    ErrorCode.WRONG_STATE,
                    "contribution " + id + " is " + state + ": only one that is " + needed.schemaName() + " can be "
                            + transition);
        }
    }

    long id() {
        return id;
    }

    String sha256() {
        return sha256;
    }

    long accountId() {
        return accountId;
    }

    State state() {
        return State.of(state);
    }

    boolean hasExactPositions() {
        return exactPositions;
    }

    Optional<String> report() {
        return Optional.ofNullable(report);
    }

    ContributionView view() {
        return new ContributionView(
                id,
                sha256,
                bytes,
                state(),
                Optional.ofNullable(title),
                Optional.ofNullable(licence),
                Optional.ofNullable(contributor),
                invented,
                rooms,
                sessions,
                trials,
                receivedAt,
                Optional.ofNullable(decidedAt),
                Optional.ofNullable(withdrawnAt),
                Optional.ofNullable(withdrawalReason),
                "/api/v1/contributions/" + id + "/report",
                "/api/v1/contributions/" + id + "/archive");
    }
}
