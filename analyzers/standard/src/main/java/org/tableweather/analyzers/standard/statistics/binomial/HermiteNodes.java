package org.tableweather.analyzers.standard.statistics.binomial;

import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/** Nodes and weights for {@code ∫ e^(−t²) g(t) dt}. */
final class HermiteNodes {

    private final GaussIntegrator rule;

    HermiteNodes(int count) {
        rule = new GaussIntegratorFactory().hermite(count);
    }

    int count() {
        return rule.getNumberOfPoints();
    }

    double node(int q) {
        return rule.getPoint(q);
    }

    double logWeight(int q) {
        return StrictMath.log(rule.getWeight(q));
    }
}
