package org.tableweather.analyzers.standard.statistics.binomial;

/**
 * Log of one room's likelihood with the room effect {@code b = σu}, {@code u ~ N(0, 1)}, integrated out, and its gradient.
 *
 * <p>{@code f(u) = Σ (yᵢηᵢ − nᵢ log(1 + e^ηᵢ)) − u²/2}, {@code ηᵢ = xᵢ'β + σu}; û is its top and {@code W = −f''(û)}. With
 * the nodes {@code t} and weights {@code w} of Gauss–Hermite quadrature placed there,
 * {@code log ∫ e^f du = log Σ w e^(t² + f(û + t√(2/W))) + ½ log(2/W)}, of which half log 2π is taken. One node is Laplace's
 * approximation. The nodes move with the parameters: {@code dû = f_uψ / W} and
 * {@code dW = W_u dû + W_ψ} enter the gradient.
 *
 * @source Pinheiro1995
 */
final class ClusterIntegral {

    private static final int MOST_STEPS = 100;

    private final ClusterCells cells;
    private final HermiteNodes nodes;
    private final double[] beta;
    private final double sigma;
    private final double[] base;
    private final double mode;
    private final double curvature;

    /**
     * Finds the top for these parameters.
     *
     * @param parameters β, then σ of any sign
     */
    ClusterIntegral(ClusterCells cells, HermiteNodes nodes, double[] parameters) {
        this.cells = cells;
        this.nodes = nodes;
        this.beta = parameters;
        this.sigma = parameters[parameters.length - 1];
        this.base = new double[cells.rows()];
        for (int i = 0; i < base.length; i++) {
            base[i] = cells.linear(i, beta);
        }
        this.mode = findMode();
        this.curvature = curvature(mode);
    }

    /** û. */
    double mode() {
        return mode;
    }

    /** W. */
    double curvature() {
        return curvature;
    }

    /** f(u). */
    private double height(double u) {
        double sum = -u * u / 2;
        for (int i = 0; i < base.length; i++) {
            double eta = base[i] + sigma * u;
            sum += cells.made[i] * eta - cells.attempts[i] * ClusterCells.softplus(eta);
        }
        return sum;
    }

    /** Σ (y − nμ). */
    private double surplus(double u) {
        double sum = 0;
        for (int i = 0; i < base.length; i++) {
            sum += cells.made[i] - cells.attempts[i] * ClusterCells.logistic(base[i] + sigma * u);
        }
        return sum;
    }

    private double slope(double u) {
        return sigma * surplus(u) - u;
    }

    private double curvature(double u) {
        double sum = 0;
        for (int i = 0; i < base.length; i++) {
            double p = ClusterCells.logistic(base[i] + sigma * u);
            sum += cells.attempts[i] * p * (1 - p);
        }
        return 1 + sigma * sigma * sum;
    }

    /** Newton's steps, halved while they do not climb; f is concave with curvature at least 1. */
    private double findMode() {
        double u = 0;
        double here = height(u);
        for (int i = 0; i < MOST_STEPS; i++) {
            double step = slope(u) / curvature(u);
            if (Math.abs(step) <= 1e-14 * (1 + Math.abs(u))) {
                return u + step;
            }
            double there = height(u + step);
            while (there < here - 1e-12 * Math.abs(here) && Math.abs(step) > 1e-14) {
                step /= 2;
                there = height(u + step);
            }
            u += step;
            here = there;
        }
        return u;
    }

    /**
     * The log likelihood without constants, its gradient added to {@code gradient}.
     *
     * @param gradient one entry per coefficient, then σ
     */
    double value(double[] gradient) {
        double scale = Math.sqrt(2 / curvature);
        double[] terms = new double[nodes.count()];
        double most = Double.NEGATIVE_INFINITY;
        for (int q = 0; q < terms.length; q++) {
            double node = nodes.node(q);
            terms[q] = nodes.logWeight(q) + node * node + height(mode + scale * node);
            most = Math.max(most, terms[q]);
        }
        double sum = 0;
        for (int q = 0; q < terms.length; q++) {
            terms[q] = StrictMath.exp(terms[q] - most);
            sum += terms[q];
        }
        Movement movement = new Movement();
        for (int q = 0; q < terms.length; q++) {
            movement.addNode(terms[q] / sum, nodes.node(q), scale, gradient);
        }
        movement.addWidth(gradient);
        return most + StrictMath.log(sum) - StrictMath.log(curvature) / 2 - StrictMath.log(Math.PI) / 2;
    }

    /** How û and W move with the parameters. */
    private final class Movement {

        private final double[] mode;
        private final double[] width;

        Movement() {
            int size = beta.length;
            mode = new double[size];
            width = new double[size];
            double third = 0;
            for (int i = 0; i < base.length; i++) {
                double p = ClusterCells.logistic(base[i] + sigma * ClusterIntegral.this.mode);
                double second = cells.attempts[i] * p * (1 - p);
                double bend = second * (1 - 2 * p);
                third += bend;
                for (int k = 0; k < size - 1; k++) {
                    mode[k] -= sigma * second * cells.x[i][k];
                    width[k] += sigma * sigma * bend * cells.x[i][k];
                }
                mode[size - 1] -= sigma * ClusterIntegral.this.mode * second;
                width[size - 1] += 2 * sigma * second + sigma * sigma * ClusterIntegral.this.mode * bend;
            }
            mode[size - 1] += surplus(ClusterIntegral.this.mode);
            for (int k = 0; k < size; k++) {
                mode[k] /= curvature;
                width[k] += sigma * sigma * sigma * third * mode[k];
            }
        }

        /** {@code ω (f_ψ + f_u (dû − t √(2/W) dW / 2W))} at one node. */
        void addNode(double weight, double node, double scale, double[] gradient) {
            double u = ClusterIntegral.this.mode + scale * node;
            double slope = weight * slope(u);
            int last = beta.length - 1;
            for (int k = 0; k <= last; k++) {
                gradient[k] += slope * (mode[k] - node * scale * width[k] / (2 * curvature));
            }
            for (int i = 0; i < base.length; i++) {
                double p = ClusterCells.logistic(base[i] + sigma * u);
                double residual = weight * (cells.made[i] - cells.attempts[i] * p);
                for (int k = 0; k < last; k++) {
                    gradient[k] += residual * cells.x[i][k];
                }
                gradient[last] += residual * u;
            }
        }

        /** {@code −½ dW / W}. */
        void addWidth(double[] gradient) {
            for (int k = 0; k < gradient.length; k++) {
                gradient[k] -= width[k] / (2 * curvature);
            }
        }
    }
}
