package org.tableweather.server.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.server.accounts.AuditTrail;
import org.tableweather.server.accounts.Caller;
import org.tableweather.server.accounts.Scope;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.NearestName;
import org.tableweather.server.web.Refusal;

/** The door to saved queries. */
@ApplicationScoped
class SavedQueries {
    private static final String PARAMETER = "query";
    private static final String NAME = "[a-z0-9][a-z0-9-]{0,63}";

    private final QueryTable table;
    private final AuditTrail audit;
    private final Clock clock;

    SavedQueries(QueryTable table, AuditTrail audit, Clock clock) {
        this.table = table;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Saves a filter: as the first version of a name, or as the next one when it is another filter than the last.
     *
     * @throws Refusal when the name is another account's, or the filter cannot be read
     */
    @Transactional
    SavedQuery save(Caller caller, String name, Map<String, Object> filter) {
        if (!name.matches(NAME)) {
            throw new Refusal(
                    ErrorCode.BAD_REQUEST,
                    "name = " + name + " is no name for a query: use small letters, digits and hyphens, at most 64");
        }
        SortedMap<String, String> checked = checked(filter);
        mustOwn(caller, name);
        Optional<SavedQuery> last = table.last(name);
        if (last.isPresent() && last.get().filter().equals(checked)) {
            return last.get();
        }
        SavedQuery saved = table.add(caller, name, checked, Instant.now(clock));
        audit.record(caller, "query.saved", "query " + saved.reference(), String.join(", ", checked.keySet()));
        return saved;
    }

    private static SortedMap<String, String> checked(Map<String, Object> filter) {
        SortedMap<String, String> checked = new TreeMap<>();
        MultivaluedMap<String, String> parameters = new MultivaluedHashMap<>();
        List<String> known = List.of(CatalogueFilter.FILTERS);
        filter.forEach((parameter, value) -> {
            if (!known.contains(parameter)) {
                throw new Refusal(
                        ErrorCode.UNKNOWN_PARAMETER,
                        "filter " + parameter + " is unknown"
                                + NearestName.of(parameter, known)
                                        .map(nearest -> ", did you mean " + nearest + "?")
                                        .orElse("")
                                + ": there are " + String.join(", ", known));
            }
            if (!(value instanceof String || value instanceof Number)) {
                throw new Refusal(
                        ErrorCode.INVALID_FIELD,
                        "filter " + parameter + " = " + value + " is neither a text nor a number: write one of them");
            }
            checked.put(parameter, value.toString());
            parameters.putSingle(parameter, value.toString());
        });
        CatalogueFilter.of(parameters);
        return checked;
    }

    private void mustOwn(Caller caller, String name) {
        table.owner(name).filter(owner -> owner != caller.accountId()).ifPresent(owner -> {
            throw new Refusal(
                    ErrorCode.NOT_YOURS, "the name " + name + " belongs to another account's query: choose another");
        });
    }

    /** Ends all versions of a name; it stays its owner's. */
    @Transactional
    void delete(Caller caller, String name) {
        SavedQuery last = find(name);
        if (!caller.may(Scope.OPERATE)) {
            mustOwn(caller, name);
        }
        table.end(last.name(), Instant.now(clock));
        audit.record(caller, "query.deleted", "query " + last.name(), "all versions");
    }

    /**
     * A saved query.
     *
     * @param reference a name, or {@code name@version}
     * @throws Refusal when there is none
     */
    SavedQuery find(String reference) {
        return reading(reference)
                .orElseThrow(() -> new Refusal(
                        ErrorCode.NOT_FOUND,
                        "there is no query " + reference
                                + NearestName.of(reference, table.names())
                                        .map(nearest -> ", did you mean " + nearest + "?")
                                        .orElse("")
                                + ": GET /api/v1/queries lists them"));
    }

    private Optional<SavedQuery> reading(String reference) {
        if (reference.matches(NAME)) {
            return table.last(reference);
        }
        if (reference.matches(NAME + "@[1-9][0-9]{0,8}")) {
            int at = reference.indexOf('@');
            return table.version(reference.substring(0, at), Integer.parseInt(reference.substring(at + 1)));
        }
        return Optional.empty();
    }

    /** Names by alphabet, each with its last version. */
    List<SavedQuery> list(String after, int most) {
        return table.list(after, most);
    }

    /**
     * The parameters of a request with those of its saved query among them.
     *
     * @throws Refusal when there is no such query, or a parameter is given in both
     */
    MultivaluedMap<String, String> applied(MultivaluedMap<String, String> query) {
        String reference = query.getFirst(PARAMETER);
        if (reference == null) {
            return query;
        }
        SavedQuery saved = find(reference);
        MultivaluedMap<String, String> applied = new MultivaluedHashMap<>();
        query.forEach((parameter, values) -> applied.put(parameter, new ArrayList<>(values)));
        saved.filter().forEach((parameter, value) -> {
            if (query.containsKey(parameter)) {
                throw new Refusal(
                        ErrorCode.BAD_REQUEST,
                        parameter + " = " + query.getFirst(parameter) + " is said by the query " + saved.reference()
                                + " already, as " + value + ": leave one of them out");
            }
            applied.putSingle(parameter, value);
        });
        applied.putSingle(PARAMETER, saved.reference());
        return applied;
    }

    /** What tells answers apart that were made by other versions; of applied parameters. */
    String version(MultivaluedMap<String, String> applied) {
        return applied.containsKey(PARAMETER) ? "-" + applied.getFirst(PARAMETER) : "";
    }
}
