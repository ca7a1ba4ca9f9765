package org.tableweather.analyzers.standard.catalogue.kind;

/**
 * What may be explained by the climate.
 *
 * @param parameter value of the parameter {@code response}: a column of the trials, or the name of what is computed from them
 * @param noun names it in a sentence
 * @param unit of the estimates, in words; {@code 1} for none
 * @param sign follows a figure in a sentence
 * @param decimals of a figure in a sentence
 * @param falling what a fall with humidity means at the table
 * @param rising what a rise with humidity means at the table
 * @param needs what an attempt must state for it, in words
 * @param reading of one attempt
 */
record Outcome(
        String parameter,
        String noun,
        String unit,
        String sign,
        int decimals,
        String falling,
        String rising,
        String needs,
        Reading reading) {

    /** Its name, with what it needs where that is more than its own column. */
    String withNeeds() {
        return parameter.equals(needs) ? parameter : parameter + ", which needs " + needs;
    }

    /** Label of an axis, with its unit where it has one. */
    String axis() {
        return unit.equals("1") ? noun : noun + ", " + unit;
    }

    /** The unit of its change per something, in words. */
    String per(String something) {
        return unit.equals("1") ? something : unit + " " + something;
    }

    /** Its name in an estimate: {@code balls-made}. */
    String estimate() {
        return parameter.replace('_', '-');
    }
}
