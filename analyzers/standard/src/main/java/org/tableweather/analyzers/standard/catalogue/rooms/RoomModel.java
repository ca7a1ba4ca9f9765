package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.catalogue.Measure;
import org.tableweather.analyzers.standard.catalogue.WhyNot;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedModel;
import org.tableweather.analyzers.standard.statistics.NestedOutcome;
import org.tableweather.analyzers.standard.statistics.NestedRefusal;

/** The pooled model of all rooms, level and slope free to vary between them, or why it has no sound fit. */
record RoomModel(Optional<NestedFit> fit, Reason reason, String detail) {

    /** Humidity, its square, temperature: the columns of the pooled model. */
    static final List<Measure> CLIMATE = List.of(Measure.HUMIDITY, Measure.HUMIDITY_SQUARED, Measure.TEMPERATURE);

    private static final NestedModel MODEL = NestedModel.withDefaults().withRandom(0, 1);

    static RoomModel of(RoomPool pool) {
        NestedOutcome outcome =
                MODEL.fit(pool.rooms().stream().map(PooledRoom::moments).toList());
        if (outcome instanceof NestedRefusal refused) {
            WhyNot why = WhyNot.of(refused);
            return none(why.reason(), why.detail());
        }
        NestedFit fit = (NestedFit) outcome;
        if (fit.coefficient(1).isEmpty()) {
            return none(Reason.DEGENERATE, "Humidity is the same in all sessions: add sessions at another humidity.");
        }
        if (fit.cautions().contains(Caution.ROOM_IN_RESIDUAL)) {
            return none(
                    Reason.TOO_FEW_RECORDS,
                    "Each room has one usable trial: room, session and trial scatter cannot be told apart; add trials.");
        }
        return fit.cautions().contains(Caution.NOT_CONVERGED)
                ? none(
                        Reason.NOT_CONVERGED,
                        "The search for the optimum of the pooled model did not settle in " + fit.evaluations()
                                + " evaluations: look for a session far off the others.")
                : new RoomModel(Optional.of(fit), Reason.NOT_APPLICABLE, "");
    }

    private static RoomModel none(Reason reason, String detail) {
        return new RoomModel(Optional.empty(), reason, detail);
    }

    /** In place of an answer. */
    Declined declined(RoomPool pool, Parameters parameters, List<String> references) {
        return new Declined(reason, detail, parameters.values(), pool.warnings(), references);
    }
}
