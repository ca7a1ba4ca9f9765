package org.tableweather.analyzers.standard.catalogue;

import java.util.Arrays;
import java.util.List;

/** What may part the sessions into groups with a curve of their own. The bounds are common practice, no source. */
enum Subgrouping {
    /** By the share of wool. */
    CLOTH_FIBRE("cloth-fibre", "cloth", "mostly wool (70 % or more)", "a wool blend (below 70 %)", "polyester") {
        @Override
        int group(SessionTraits traits) {
            if (traits.polyesterPct() >= 50) {
                return 2;
            }
            return Double.isNaN(traits.woolPct()) ? NONE : traits.woolPct() >= 70 ? 0 : 1;
        }
    },
    /** By the playing length: tables of about 2, 2.2 and 2.5 m. */
    TABLE_SIZE("table-size", "table", "under 2.1 m", "2.1 to 2.4 m", "over 2.4 m") {
        @Override
        int group(SessionTraits traits) {
            return band(traits.playingLengthMm(), 2100, 2400);
        }
    },
    /** By the time since the balls were made. */
    BALL_SET_AGE("ball-set-age", "ball set", "under 2 years", "2 to 5 years", "over 5 years") {
        @Override
        int group(SessionTraits traits) {
            return band(traits.ballAgeDays(), 2 * 365.25, 5 * 365.25);
        }
    },
    /** By the time since the balls were cleaned. */
    BALL_CLEANING(
            "ball-cleaning", "balls", "cleaned within 7 days", "cleaned within 30 days", "not cleaned for 30 days") {
        @Override
        int group(SessionTraits traits) {
            return band(traits.cleanedDays(), 7, 30);
        }
    },
    /** By the kind of delivery. */
    DELIVERY("delivery", "delivery", "ramp", "cue", "other") {
        @Override
        int group(SessionTraits traits) {
            return switch (traits.delivery()) {
                case "" -> NONE;
                case "ramp" -> 0;
                case "cue" -> 1;
                default -> 2;
            };
        }
    };

    /** Not stated. */
    static final int NONE = -1;

    /** The parameter's value. */
    final String parameter;
    /** What is grouped, in a word. */
    final String noun;
    /** Names of the groups. */
    final List<String> groups;

    Subgrouping(String parameter, String noun, String... groups) {
        this.parameter = parameter;
        this.noun = noun;
        this.groups = List.of(groups);
    }

    /** The group of a session, or {@link #NONE}. */
    abstract int group(SessionTraits traits);

    private static int band(double number, double first, double second) {
        if (Double.isNaN(number)) {
            return NONE;
        }
        return number < first ? 0 : number <= second ? 1 : 2;
    }

    static List<String> parameters() {
        return Arrays.stream(values()).map(each -> each.parameter).toList();
    }

    static Subgrouping of(String parameter) {
        return Arrays.stream(values())
                .filter(each -> each.parameter.equals(parameter))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("parameter subgroup = " + parameter + " is not one of "
                        + String.join(", ", parameters()) + ": choose one of them"));
    }
}
