package org.tableweather.server.contribution;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.server.accounts.AuditTrail;
import org.tableweather.server.accounts.Caller;
import org.tableweather.server.accounts.Scope;
import org.tableweather.server.catalogue.Catalogue;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/** What is known of contributions, and what their owners and curators decide. */
@ApplicationScoped
class Register {
    private final Catalogue catalogue;
    private final AuditTrail audit;
    private final Clock clock;

    Register(Catalogue catalogue, AuditTrail audit, Clock clock) {
        this.catalogue = catalogue;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Newest first.
     *
     * @param state empty for all
     * @param sha256 empty for all
     * @param before number that they must be below
     * @param limit most of them
     */
    @Transactional
    List<ContributionView> list(Optional<State> state, Optional<String> sha256, long before, int limit) {
        Map<String, Object> values = new HashMap<>(Map.of("before", before));
        StringBuilder where = new StringBuilder("id < :before");
        state.ifPresent(is -> {
            where.append(" and state = :state");
            values.put("state", is.schemaName());
        });
        sha256.ifPresent(is -> {
            where.append(" and sha256 = :sha256");
            values.put("sha256", is);
        });
        return StoredContribution.<StoredContribution>find(where + " order by id desc", values)
                .page(0, limit)
                .<StoredContribution>list()
                .stream()
                .map(StoredContribution::view)
                .toList();
    }

    @Transactional
    ContributionView one(long id) {
        return find(id).view();
    }

    /** The check report as JSON. */
    @Transactional
    String report(long id) {
        StoredContribution contribution = find(id);
        return contribution
                .report()
                .orElseThrow(() -> new Refusal(
                        ErrorCode.NOT_FOUND,
                        "contribution " + id + " is " + contribution.state().schemaName()
                                + " and has no report yet: ask again when it is decided"));
    }

    /** The check report as JSON; empty while it is not decided. */
    @Transactional
    Optional<String> reportIfAny(long id) {
        return find(id).report();
    }

    /** Whether anybody may have the archive. */
    @Transactional
    boolean isOpen(long id) {
        return isOpen(find(id));
    }

    private static boolean isOpen(StoredContribution contribution) {
        return contribution.state() != State.RECEIVED
                && contribution.state() != State.REFUSED
                && !contribution.hasExactPositions();
    }

    /**
     * The digest of an archive that may be handed out.
     *
     * @param asking whoever asks
     */
    @Transactional
    String archive(long id, Optional<Caller> asking) {
        StoredContribution contribution = find(id);
        if (contribution.state() == State.REFUSED) {
            throw new Refusal(
                    ErrorCode.NOT_FOUND,
                    "contribution " + id + " is refused and its archive is not kept: its report says why");
        }
        boolean entitled = asking.map(caller -> isOwnerOr(Scope.CURATE, caller, contribution))
                .orElse(false);
        if (!entitled && !isOpen(contribution)) {
            throw new Refusal(
                    ErrorCode.NOT_YOURS,
                    "the archive of contribution " + id + " tells where a room is, or is not checked yet: only its"
                            + " contributor and curators may have it; rooms, sessions and trials are open");
        }
        return contribution.sha256();
    }

    /** What was received but not decided. */
    @Transactional
    List<String> received() {
        return StoredContribution.<StoredContribution>list("state = ?1 order by id", State.RECEIVED.schemaName())
                .stream()
                .map(StoredContribution::sha256)
                .toList();
    }

    @Transactional
    ContributionView accept(Caller caller, long id) {
        StoredContribution contribution = find(id);
        contribution.accept(Instant.now(clock));
        catalogue.publish(id);
        audit.record(caller, "contribution.accepted", "contribution " + id, "by a curator");
        return contribution.view();
    }

    @Transactional
    ContributionView withdraw(Caller caller, long id, String reason) {
        StoredContribution contribution = find(id);
        if (!isOwnerOr(Scope.CURATE, caller, contribution)) {
            throw new Refusal(
                    ErrorCode.NOT_YOURS,
                    "contribution " + id + " belongs to another account: ask its contributor, or use a token with the"
                            + " scope curate");
        }
        contribution.withdraw(Instant.now(clock), reason);
        catalogue.withdraw(id);
        audit.record(caller, "contribution.withdrawn", "contribution " + id, contribution.sha256() + " " + reason);
        return contribution.view();
    }

    private static boolean isOwnerOr(Scope scope, Caller caller, StoredContribution contribution) {
        return caller.may(scope) || contribution.accountId() == caller.accountId();
    }

    private static StoredContribution find(long id) {
        return StoredContribution.<StoredContribution>findByIdOptional(id)
                .orElseThrow(() -> new Refusal(
                        ErrorCode.NOT_FOUND,
                        "contribution " + id + " does not exist: GET /api/v1/contributions lists them"));
    }
}
