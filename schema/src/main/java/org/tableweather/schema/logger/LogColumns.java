package org.tableweather.schema.logger;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which columns of a log hold what.
 *
 * @param names of all columns
 * @param time positions of the time, or of date and time
 * @param temp position of the temperature
 * @param rh position of the humidity
 * @param pressure position of the pressure; −1 without
 * @param guesses what was guessed, in words
 */
record LogColumns(List<String> names, List<Integer> time, int temp, int rh, int pressure, List<String> guesses) {
    private static final Pattern TIME = Pattern.compile("time|date|stamp|zeit|datum|fecha|heure|dato|klokke");
    private static final Pattern TEMP = Pattern.compile("temp|celsius|fahrenheit|°\\s*[cf]\\b");
    private static final Pattern SHORT_TEMP = Pattern.compile("t[ _-]?(\\d+|in|room|air|c|f)?");
    private static final Pattern RH = Pattern.compile("humid|feucht|fukt|hygro|(^|[^a-z])r\\.?[hf]([^a-z]|$)");
    private static final Pattern NOT_AIR = Pattern.compile("dew|taupunkt|wet|out|set|ratio|abs|spread|cpu|batter");

    /**
     * Finds them.
     *
     * @param names of the header
     * @param options what is known
     * @throws LogNotUnderstood when one cannot be found
     */
    static LogColumns find(List<String> names, LogOptions options) throws LogNotUnderstood {
        List<String> guesses = new ArrayList<>();
        List<Integer> time = new ArrayList<>();
        if (options.timeColumns().isEmpty()) {
            time.addAll(guessTime(names, guesses));
        } else {
            for (String name : options.timeColumns()) {
                time.add(named(names, name));
            }
        }
        List<Integer> temps = matching(names, LogColumns::isTemp);
        List<Integer> humidities = matching(names, LogColumns::isRh);
        int temp = options.tempColumn().isPresent()
                ? named(names, options.tempColumn().get())
                : -1;
        int rh =
                options.rhColumn().isPresent() ? named(names, options.rhColumn().get()) : -1;
        if (temp < 0) {
            temp = guess("temperature", "tempColumn", names, temps, rh, guesses);
        }
        if (rh < 0) {
            rh = guess("relative humidity", "rhColumn", names, humidities, temp, guesses);
        }
        int pressure = options.pressureColumn().isPresent()
                ? named(names, options.pressureColumn().get())
                : -1;
        return new LogColumns(names, time, temp, rh, pressure, guesses);
    }

    /** Whether a row looks like a header: a time and something measured. */
    static boolean isHeader(List<String> names, LogOptions options) {
        boolean time = options.timeColumns().isEmpty()
                ? names.stream().anyMatch(LogColumns::isTime)
                : names.containsAll(options.timeColumns());
        boolean measured = names.stream().anyMatch(name -> isTemp(name) || isRh(name))
                || options.tempColumn().filter(names::contains).isPresent()
                || options.rhColumn().filter(names::contains).isPresent();
        return time && measured;
    }

    private static boolean isTime(String name) {
        return TIME.matcher(name.toLowerCase(Locale.ROOT)).find();
    }

    private static boolean isTemp(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return (TEMP.matcher(lower).find() || SHORT_TEMP.matcher(lower).matches())
                && !NOT_AIR.matcher(lower).find()
                && !TIME.matcher(lower).find();
    }

    private static boolean isRh(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return RH.matcher(lower).find() && !NOT_AIR.matcher(lower).find();
    }

    private static List<Integer> matching(List<String> names, Predicate<String> what) {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            if (what.test(names.get(i))) {
                found.add(i);
            }
        }
        return found;
    }

    private static List<Integer> guessTime(List<String> names, List<String> guesses) throws LogNotUnderstood {
        List<Integer> found = matching(names, LogColumns::isTime);
        if (found.isEmpty()) {
            throw new LogNotUnderstood(
                    "no column looks like a time; the columns are " + names + ": name it as timeColumn");
        }
        boolean dateThenTime =
                found.size() > 1 && isDateOnly(names.get(found.get(0))) && !isDateOnly(names.get(found.get(1)));
        List<Integer> taken = dateThenTime ? found.subList(0, 2) : found.subList(0, 1);
        guesses.add("time from column "
                + String.join(" and ", taken.stream().map(names::get).toList()));
        return taken;
    }

    private static boolean isDateOnly(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return (lower.contains("date") || lower.contains("datum") || lower.contains("fecha"))
                && !lower.contains("time");
    }

    private static int guess(
            String quantity, String option, List<String> names, List<Integer> found, int partner, List<String> guesses)
            throws LogNotUnderstood {
        if (found.isEmpty()) {
            throw new LogNotUnderstood(
                    "no column looks like " + quantity + "; the columns are " + names + ": name it as " + option);
        }
        int taken = found.get(0);
        if (partner >= 0) {
            Optional<String> number = number(names.get(partner));
            taken = found.stream()
                    .filter(position -> number(names.get(position)).equals(number))
                    .findFirst()
                    .orElse(taken);
        }
        String others = found.size() == 1
                ? ""
                : ", out of " + String.join(", ", found.stream().map(names::get).toList());
        guesses.add(quantity + " from column " + names.get(taken) + others);
        return taken;
    }

    /** The number that tells the sensors of one log apart: T5 and RH_5. */
    private static Optional<String> number(String name) {
        Matcher digits = Pattern.compile("\\d+").matcher(name);
        return digits.find() ? Optional.of(digits.group()) : Optional.empty();
    }

    private static int named(List<String> names, String name) throws LogNotUnderstood {
        int position = names.indexOf(name);
        if (position < 0) {
            throw new LogNotUnderstood("there is no column " + name + "; the columns are " + names);
        }
        return position;
    }
}
