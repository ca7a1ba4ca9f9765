package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.path.PathSummary.Landings;
import org.tableweather.analyzers.standard.catalogue.rail.PooledRail;
import org.tableweather.schema.record.Shot;

/** Holds every room's landings of a shot against what the other rooms foretell: by the rail and the ball, and by statistics alone. */
final class PathCheck {

    private static final int FEWEST_ROOMS = 3;
    private static final int MOST_DRAWS = 2000;

    private final PathPool pool;
    private final PathQuestion question;
    private final Shot shot;
    final List<CheckedSession> sessions = new ArrayList<>();
    final List<String> leftOut = new ArrayList<>();
    /** Sessions where too many draws leave the way. */
    int offTheWay;

    private PathCheck(PathPool pool, PathQuestion question, Shot shot) {
        this.pool = pool;
        this.question = question;
        this.shot = shot;
    }

    static Analysis of(PathPool pool, PathQuestion question, Parameters parameters, List<String> references) {
        if (question.typed()) {
            return declined("A typed shot has no landings to be held against: name a shot.", parameters, references);
        }
        Shot shot = PathCase.shot(question, pool);
        PathCheck check = new PathCheck(pool, question, shot);
        check.rooms().forEach(check::hold);
        long rooms =
                check.sessions.stream().map(CheckedSession::room).distinct().count();
        if (rooms < FEWEST_ROOMS) {
            return declined(
                    Figures.counted(rooms, "room") + " with landings of " + shot.id() + " that the others foretell"
                            + check.why() + ": at least " + FEWEST_ROOMS
                            + " are needed; the shots with landings are "
                            + Figures.listed(new ArrayList<>(pool.landed().keySet())) + ".",
                    parameters,
                    references);
        }
        return new CheckAnswer(check, shot, pool, question).write(references);
    }

    private static Declined declined(String detail, Parameters parameters, List<String> references) {
        return new Declined(Reason.TOO_FEW_RECORDS, detail, parameters.values(), List.of(), references);
    }

    private String why() {
        return leftOut.isEmpty() ? "" : " (" + leftOut.get(0) + ")";
    }

    private List<String> rooms() {
        return pool.sessions.stream()
                .filter(each -> PathPool.landings(each, shot.id()).isPresent())
                .map(SessionSummary::roomKey)
                .distinct()
                .toList();
    }

    private void hold(String room) {
        PathPool others = pool.without(room);
        Optional<String> none = PooledRail.of(
                others.pairs(),
                question.measure(),
                question.stepped(),
                rail -> {
                    hold(room, others, rail);
                    return Optional.empty();
                },
                declined -> Optional.of(declined.detail()));
        none.ifPresent(why -> leftOut.add("without " + room + ": " + why));
    }

    private void hold(String room, PathPool others, PooledRail rail) {
        Optional<StatisticalLanding> statistics = StatisticalLanding.of(others, shot.id());
        PathCase asked = new PathCase(others, question, rail);
        for (SessionSummary<PathSummary> each : pool.sessions) {
            if (each.roomKey().equals(room)) {
                PathPool.landings(each, shot.id()).ifPresent(landings -> hold(each, landings, asked, statistics));
            }
        }
    }

    private void hold(
            SessionSummary<PathSummary> session,
            Landings landings,
            PathCase asked,
            Optional<StatisticalLanding> statistics) {
        Pattern pattern = Pattern.of(shot, question, PathPool.table(session.summary()));
        double noseSine = session.summary().rail().noseSine();
        PathModel model = new PathModel(asked.rail, pattern, noseSine, Optional.empty(), asked.cloth());
        ModelClimate at = asked.climate(new AskedClimate(landings.tempC(), landings.rhPct()));
        double attemptSd = asked.pool.scatterDia(shot.id()).orElseGet(() -> new LandingSpread(model).scattered(at));
        int count = Math.min(MOST_DRAWS, question.draws());
        LandingDraws.Sorted draws =
                new LandingDraws(model, question.seed() + sessions.size()).attempts(at, attemptSd, count);
        if (Double.isNaN(at.x()) || draws.lost() > count / 2) {
            offTheWay++;
            return;
        }
        sessions.add(new CheckedSession(
                session.roomKey(),
                landings.meanDia(),
                landings.offsetsDia(),
                draws.mean(),
                landings.offsetsDia().stream().mapToDouble(draws::shareBelow).toArray(),
                statistics
                        .map(each -> each.mean(landings.rhPct(), landings.tempC()))
                        .orElse(Double.NaN),
                statistics.map(each -> each.deviation(landings.rhPct())).orElse(Double.NaN)));
    }
}
