package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ParameterInfo;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.MomentsAnalyzer;
import org.tableweather.analyzers.standard.catalogue.Response;
import org.tableweather.analyzers.standard.catalogue.SessionMoments;
import org.tableweather.analyzers.standard.catalogue.ShotCounts;

/**
 * How one room differs from the others, by the pooled model of all rooms: its level and slope shrunken towards the average
 * room, their places among the rooms, and which sessions would tell most.
 *
 * @source Henderson1975
 * @source Laird1982
 */
public final class RoomComparison implements MomentsAnalyzer {

    static final String SHOT = "shot";
    static final String RESPONSE = "response";
    static final String ROOM = "room";

    private static final List<String> REFERENCES =
            List.of("Laird1982", "Patterson1971", "Henderson1975", "Kuznetsova2017", "Laird1989", "Goldstein1996");

    private static final AnalyzerInfo INFO = new AnalyzerInfo(
            "room-comparison",
            "1.1.1",
            "1",
            "One room beside the others",
            "How does my room differ from the others, and what should be measured there next?",
            "The pooled model of all rooms, REML: y = b₀ + b₁ h + b₂ h² + b₃ t + (u₀ + u₁ h)[room] + w[session] + e,"
                    + " h = (RH − 50 %)/10 %, t = (T − 21 °C)/5 K. A room's departures u are its best predictions given all"
                    + " rooms: shrunken towards none, the more the less is known of the room, so that a room with few sessions"
                    + " is not called special for its luck. Interval: value ± 1.96 standard errors, variances taken as known."
                    + " Place among the rooms, 1 for the largest: its chances given all rooms' departures and their errors."
                    + " Next sessions: the humidities, one after the other, that lower the standard error of the room's slope"
                    + " most, K − K z z'K/(v + s²/n + z'Kz), z = (1, h).",
            List.of(
                    "Rooms are a sample of rooms, their levels and slopes near normal about the average room.",
                    "Sessions and trials scatter alike in all rooms, and these variances are taken as known.",
                    "The same shot, set up the same way, in every room: a departure may be the table, the cloth, the balls, the"
                            + " hygrometer or the person, and the data do not say which.",
                    "Places: the rooms' departures err independently, as they nearly do with many rooms."),
            List.of(
                    "no trials, or none with the response and the climate",
                    "no more than four sessions, or fewer than two rooms",
                    "the room is not among those with usable trials, or several are called so",
                    "the pooled model has no sound fit"),
            List.of(
                    new ParameterInfo(
                            ROOM,
                            "key of the room, or its id where only one is called so; when not set, the one with the most"
                                    + " usable trials",
                            "1",
                            "",
                            List.of()),
                    ShotCounts.parameter("usable trials"),
                    Response.asked("what is explained")),
            Response.columnsWith("session", "shot", "temp_c", "rh_pct"),
            REFERENCES);

    @Override
    public AnalyzerInfo info() {
        return INFO;
    }

    @Override
    public Analysis conclude(SummarySource<SessionMoments> summaries, Parameters parameters) {
        Response response = Response.of(parameters.text(RESPONSE).orElse(Response.FINAL_REBOUND_ANGLE.parameter));
        RoomPool pool = new RoomPool(summaries.sessions(), parameters.text(SHOT), RoomModel.CLIMATE, response);
        Optional<Declined> none = pool.declined(parameters, REFERENCES);
        if (none.isPresent()) {
            return none.get();
        }
        if (pool.rooms().size() < 2 || pool.sessions() <= RoomModel.CLIMATE.size() + 1) {
            return declined(
                    pool,
                    parameters,
                    Reason.TOO_FEW_RECORDS,
                    Figures.counted(pool.sessions(), "session") + " in "
                            + Figures.counted(pool.rooms().size(), "room")
                            + ": at least 5 sessions in 2 rooms are needed, best at different humidities.");
        }
        RoomChoice choice = RoomChoice.of(pool.rooms(), parameters.text(ROOM));
        if (choice.position() < 0) {
            return declined(pool, parameters, Reason.NOT_APPLICABLE, choice.problem());
        }
        RoomModel model = RoomModel.of(pool);
        return model.fit()
                .<Analysis>map(fit -> new ComparisonAnswer(
                                pool,
                                fit,
                                choice.position(),
                                parameters.text(ROOM).isPresent())
                        .write(REFERENCES))
                .orElseGet(() -> model.declined(pool, parameters, REFERENCES));
    }

    private static Declined declined(RoomPool pool, Parameters parameters, Reason reason, String detail) {
        return new Declined(reason, detail, parameters.values(), pool.warnings(), REFERENCES);
    }
}
