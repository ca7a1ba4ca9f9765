package org.tableweather.schema.check;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The catalogue of all checks. */
public final class Checks {
    private static final List<Check> ALL = Stream.of(
                    StructureChecks.all(),
                    UnitChecks.all(),
                    IdentityChecks.all(),
                    ClimateChecks.all(),
                    InstrumentChecks.all(),
                    EquipmentChecks.all(),
                    OutcomeChecks.all(),
                    GeometryChecks.all(),
                    ProtocolChecks.all(),
                    StatisticsChecks.all(),
                    CatalogueChecks.all())
            .flatMap(Collection::stream)
            .toList();

    private static final Map<String, Check> BY_ID =
            ALL.stream().collect(Collectors.toUnmodifiableMap(Check::id, Function.identity()));

    private Checks() {}

    /** All checks, group by group. */
    public static List<Check> all() {
        return ALL;
    }

    /**
     * The check of this id.
     *
     * @param id {@code group.rule}
     */
    public static Optional<Check> byId(String id) {
        return Optional.ofNullable(BY_ID.get(id));
    }
}
