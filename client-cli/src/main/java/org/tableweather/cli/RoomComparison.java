package org.tableweather.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.spi.Analysis;

/**
 * One room beside the pool: its shrunken departures, each with an approximate 95 % interval ({@code value ± 1.96·standard
 * error}, variances taken as known) and its place among the rooms.
 *
 * @param room key
 * @param sessions of the room
 * @param trials of the room
 * @param rooms in the pool, this one included
 * @param invented whether any data are made up
 * @param hash names the sessions that went in
 * @param departures one for each effect
 * @param sentence all of it in plain words
 */
record RoomComparison(
        String room,
        long sessions,
        long trials,
        int rooms,
        boolean invented,
        String hash,
        List<Departure> departures,
        String sentence) {
    // normal quantile of 97.5 %
    private static final double Z = 1.959963984540054;

    /**
     * One departure.
     *
     * @param name {@code intercept}, {@code humidity}
     * @param meaning in words
     * @param unit of all figures
     * @param average the average room's value; empty when the analysis has none
     * @param value what this room adds to it
     * @param standardError of the value
     * @param lower of the interval
     * @param upper of the interval
     * @param place 1 for the largest value among the rooms
     * @param roomSd how much rooms vary; empty when not known
     */
    record Departure(
            String name,
            String meaning,
            String unit,
            OptionalDouble average,
            double value,
            double standardError,
            double lower,
            double upper,
            int place,
            OptionalDouble roomSd) {

        /** The room's own value; empty when the average room's is not known. */
        OptionalDouble here() {
            return average.isEmpty() ? average : OptionalDouble.of(average.getAsDouble() + value);
        }

        boolean isClear() {
            return lower > 0 || upper < 0;
        }
    }

    /**
     * Compares.
     *
     * @param run an analysis with room effects
     * @param wanted a room key, or the room's id where it is the only one of this id; empty for the only room there is
     * @throws Failure when there is no such room or no effects
     */
    static RoomComparison of(AnalysisRun run, Optional<String> wanted) {
        Analysis.Estimated answer = run.analysis().fold(estimated -> estimated, none -> {
            throw Failure.fault(
                    "there is nothing to compare with: " + none.reason().schemaName() + ", " + none.detail(),
                    "gather sessions in more climates and rooms");
        });
        if (answer.rooms().size() < 2) {
            throw Failure.fault(
                    "the pool of " + run.dataset().rooms() + " room(s) gives no room effects",
                    "compare with a pool of at least two rooms");
        }
        Analysis.RoomEffects room = find(answer.rooms(), wanted);
        List<Departure> departures =
                room.effects().stream().map(effect -> departure(answer, effect)).toList();
        return new RoomComparison(
                room.room(),
                room.sessions(),
                room.trials(),
                answer.rooms().size(),
                run.dataset().invented(),
                run.dataset().hash(),
                departures,
                sentence(departures, answer.rooms().size()));
    }

    private static Analysis.RoomEffects find(List<Analysis.RoomEffects> rooms, Optional<String> wanted) {
        if (wanted.isEmpty()) {
            throw Failure.usage("which room?", "name one of: " + names(rooms));
        }
        String name = wanted.get();
        List<Analysis.RoomEffects> found = rooms.stream()
                .filter(room -> room.room().equals(name) || room.room().endsWith("/" + name))
                .toList();
        if (found.size() != 1) {
            throw Failure.usage(
                    found.isEmpty() ? "there is no room " + name : found.size() + " rooms are called " + name,
                    "name one of: " + names(found.isEmpty() ? rooms : found));
        }
        return found.get(0);
    }

    private static String names(List<Analysis.RoomEffects> rooms) {
        int shown = 20;
        String names = String.join(
                ", ",
                rooms.stream().limit(shown).map(Analysis.RoomEffects::room).toList());
        return rooms.size() > shown ? names + ", ... (" + rooms.size() + " in all)" : names;
    }

    private static Departure departure(Analysis.Estimated answer, Analysis.Effect effect) {
        Optional<Analysis.Estimate> mean = answer.estimates().stream()
                .filter(one -> one.name().equals(effect.name()))
                .findFirst();
        double half = Z * effect.standardError();
        List<Double> larger = new ArrayList<>();
        for (Analysis.RoomEffects other : answer.rooms()) {
            other.effects().stream()
                    .filter(one -> one.name().equals(effect.name()) && one.value() > effect.value())
                    .forEach(one -> larger.add(one.value()));
        }
        return new Departure(
                effect.name(),
                mean.map(estimate -> estimate.meaning().replace(" in an average room", ""))
                        .orElse(effect.name()),
                mean.map(Analysis.Estimate::unit).orElse(""),
                mean.map(Analysis.Estimate::value).map(OptionalDouble::of).orElse(OptionalDouble.empty()),
                effect.value(),
                effect.standardError(),
                effect.value() - half,
                effect.value() + half,
                1 + larger.size(),
                roomSd(answer, effect.name()));
    }

    private static OptionalDouble roomSd(Analysis.Estimated answer, String effect) {
        return answer.variance().stream()
                .filter(one -> one.name().equals("room." + effect))
                .map(Analysis.VarianceComponent::sd)
                .findFirst()
                .orElse(OptionalDouble.empty());
    }

    private static String sentence(List<Departure> departures, int rooms) {
        StringBuilder words = new StringBuilder();
        departures.stream()
                .sorted(Comparator.comparing(one -> !one.name().equals("intercept")))
                .forEach(one -> words.append(words.isEmpty() ? "" : " ").append(inWords(one, rooms)));
        return words.toString();
    }

    private static String inWords(Departure one, int rooms) {
        String beside = one.average().isEmpty()
                ? ""
                : String.format(
                        Locale.ROOT,
                        " (%.2f %s in an average room)",
                        one.average().getAsDouble(),
                        one.unit());
        return String.format(
                Locale.ROOT,
                "%s%s: here %+.2f %s, 95 %% interval %.2f to %.2f, place %d of %d; %s.",
                capital(one.meaning()),
                beside,
                one.value(),
                one.unit(),
                one.lower(),
                one.upper(),
                one.place(),
                rooms,
                verdict(one));
    }

    private static String verdict(Departure one) {
        if (!one.isClear()) {
            return "the data do not tell it from an average room";
        }
        if (one.roomSd().isEmpty()) {
            return "a real departure from the average room";
        }
        double roomSds = Math.abs(one.value()) / one.roomSd().getAsDouble();
        return roomSds <= 2 ? "a real departure, of a size that rooms show" : "unusual among rooms";
    }

    private static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
