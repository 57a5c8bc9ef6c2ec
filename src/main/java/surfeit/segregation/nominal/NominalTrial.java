package surfeit.segregation.nominal;

import surfeit.segregation.uncertainty.SharedError;
import surfeit.statistics.CombinedError;

/**
 * The arithmetic of one element tested against its nominal limits, for the mean of a group and for a single spot alike;
 * the rules stand at {@link NominalTest}. It is filled again for every mean, without making an object. Not thread-safe.
 *
 * <p>It begins with a mean; then comes every random part, of which the largest p and the outer limits stay.
 */
public final class NominalTrial {
    /** From this share of the smaller part on, an element's random part has the linear scale count too; by simulation. */
    public static final double HULL_RANDOM = 0.2;
    /** From this share of the smaller part on, so has its additive floor; by simulation. */
    public static final double HULL_FLOOR = 0.05;

    private final NominalTest.Limits limits;
    private final double margin;
    private final boolean interval;
    private final DecisionLevel level;
    private final double logitLow;
    private final double logitHigh;

    private double m;
    private double x;
    private double q;
    private double largest;
    private boolean inside;
    private boolean hull;
    private double theta;
    private double uTheta;
    private double uLinear;
    private double p;
    private double pEquivalence;
    private double low;
    private double high;
    private double low90;
    private double high90;

    /**
     * @param margin   in log odds; NaN where no equivalence is asked
     * @param interval true where interval and bound are asked, and p values of equivalence above one half as they are
     */
    public NominalTrial(NominalTest.Limits limits, double margin, boolean interval, DecisionLevel level) {
        this.limits = limits;
        this.margin = margin;
        this.interval = interval;
        this.level = level;
        this.logitLow = limits.low() > 0 ? NominalTest.logit(limits.low()) : Double.NEGATIVE_INFINITY;
        this.logitHigh = limits.high() < 1 ? NominalTest.logit(limits.high()) : Double.POSITIVE_INFINITY;
    }

    /** Begins with a mean, its shared error, and the largest of its random parts: these choose the scale. */
    public void begin(double mean, double largestPart, SharedError shared, int element) {
        m = mean;
        largest = largestPart;
        p = 0;
        pEquivalence = 0;
        if (interval) {
            low = Double.POSITIVE_INFINITY;
            high = Double.NEGATIVE_INFINITY;
            low90 = Double.POSITIVE_INFINITY;
            high90 = Double.NEGATIVE_INFINITY;
        }
        theta = Double.NaN;
        uTheta = Double.NaN;
        double edge = Math.min(m, 1 - m);
        inside = edge > 0;
        hull = edge <= 0 || largest >= HULL_RANDOM * edge || shared.floorReaches(HULL_FLOOR * edge, element);
        if (inside) {
            q = m * (1 - m);
            x = NominalTest.logit(m);
            theta = NominalTest.Limits.beyond(x, logitLow, logitHigh);
            uTheta = withNominal(hull ? shared.logitHull(element) : shared.logit(element), nominalOnLogit());
        }
        if (hull) {
            uLinear = withNominal(shared.linear(element), limits.uncertainty());
        }
    }

    private static double withNominal(double shared, double nominal) {
        return nominal == 0 ? shared : Math.hypot(shared, nominal);
    }

    private double nominalOnLogit() {
        if (limits.uncertainty() == 0) {
            return 0;
        }
        double nearest = Math.min(Math.max(m, limits.low()), limits.high());
        return limits.uncertainty() / (nearest * (1 - nearest));
    }

    /** Adds one random part of the mean: its standard error and the degrees of freedom behind it. */
    public void add(double s, double df) {
        if (inside) {
            onLogit(s / q, df, uTheta);
        }
        if (hull) {
            onLinear(s, df, uLinear);
        }
    }

    private void onLogit(double s, double df, double u) {
        if (s == 0 && u == 0) {
            nothingUncertain();
            return;
        }
        against(theta, x - logitLow + margin, logitHigh + margin - x, s, df, u);
        if (interval) {
            double h95 = CombinedError.halfWidth(s, df, u, 0.95);
            double h90 = CombinedError.halfWidth(s, df, u, 0.90);
            widen(NominalTest.expit(x - h95), NominalTest.expit(x + h95), NominalTest.expit(x - h90),
                NominalTest.expit(x + h90));
        }
    }

    private void onLinear(double s, double df, double u) {
        if (s == 0 && u == 0) {
            nothingUncertain();
            return;
        }
        against(limits.distance(m), m - NominalTest.expit(logitLow - margin), NominalTest.expit(logitHigh + margin) - m, s,
            df, u);
        if (interval) {
            double h95 = CombinedError.halfWidth(s, df, u, 0.95);
            double h90 = CombinedError.halfWidth(s, df, u, 0.90);
            widen(cut(m - h95), cut(m + h95), cut(m - h90), cut(m + h90));
        }
    }

    /** An end cut at 0 and 1; a mean of noise can lie so far outside that both ends do. */
    private static double cut(double end) {
        return Math.min(Math.max(end, 0), 1);
    }

    /** p values of the distance d and of those to the margins on either side; a limit at 0 or 1 has none on its side. */
    private void against(double d, double aboveLow, double belowHigh, double s, double df, double u) {
        double found = d == 0 && !limits.isPoint() ? 1 : differs(d, s, df, u);
        p = p < found ? found : p;
        if (Double.isNaN(margin)) {
            return; // equivalence is not asked
        }
        double below = limits.low() > 0 ? reaches(aboveLow, s, df, u) : 0;
        double above = limits.high() < 1 ? reaches(belowHigh, s, df, u) : 0;
        pEquivalence = Math.max(pEquivalence, Math.max(below, above));
    }

    /** Without a random and a shared part there is no probability: no verdict, and no interval but the mean. */
    private void nothingUncertain() {
        p = Double.NaN;
        pEquivalence = 1;
        if (interval) {
            widen(m, m, m, m);
        }
    }

    private double differs(double d, double s, double df, double u) {
        return level.surelyAboveTwoSided(d, s, df, u) ? 1 : CombinedError.twoSidedP(d, s, df, u);
    }

    /** One-sided p of equivalence; where only the verdict is asked, the exact value above one half does not matter. */
    private double reaches(double d, double s, double df, double u) {
        boolean asked = interval || d > 0 && !level.surelyAboveOneSided(d, Math.hypot(s, u));
        return asked ? CombinedError.oneSidedP(d, s, df, u) : 1;
    }

    private void widen(double from, double to, double from90, double to90) {
        low = Math.min(low, from);
        high = Math.max(high, to);
        low90 = Math.min(low90, from90);
        high90 = Math.max(high90, to90);
    }

    public double mean() {
        return m;
    }

    /** The limits it tests against. */
    public NominalTest.Limits limits() {
        return limits;
    }

    double theta() {
        return inside ? theta : limits.distance(m);
    }

    double sTheta() {
        return inside ? largest / q : Double.NaN;
    }

    double uTheta() {
        return uTheta;
    }

    String scale() {
        return !hull ? "logit" : inside ? "hull" : "linear";
    }

    public double p() {
        return p;
    }

    double pEquivalence() {
        return pEquivalence;
    }

    double low() {
        return interval ? low : Double.NaN;
    }

    double high() {
        return interval ? high : Double.NaN;
    }

    public int direction() {
        return (int) Math.signum(limits.distance(m));
    }

    /** Largest distance of the 90 % interval beyond the limits, as an odds ratio. */
    double notMoreThan() {
        if (!interval) {
            return Double.NaN;
        }
        double below = limits.low() > 0
            ? low90 > 0 ? logitLow - NominalTest.logit(low90) : Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
        double above = limits.high() < 1
            ? high90 < 1 ? NominalTest.logit(high90) - logitHigh : Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
        return Math.exp(Math.max(Math.max(below, above), 0));
    }
}
