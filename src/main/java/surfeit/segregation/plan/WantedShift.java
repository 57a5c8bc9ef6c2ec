package surfeit.segregation.plan;

import java.util.Locale;
import surfeit.segregation.nominal.NominalTest;

/**
 * The shift a measurement is to show: a factor on the nominal fraction, or an odds ratio against it.
 *
 * <p>Above 1 for more than nominal, below 1 for less. In a binary the odds ratio is the same shift for both elements;
 * the factor is not.
 */
public record WantedShift(Measure measure, double value) {

    /** How the shift is stated. */
    public enum Measure { FACTOR, ODDS_RATIO }

    public WantedShift {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY) || value == 1) {
            throw new PlanException("A wanted factor or odds ratio is a finite number above 0 other than 1, got "
                + value + ".");
        }
    }

    public static WantedShift factor(double factor) {
        return new WantedShift(Measure.FACTOR, factor);
    }

    public static WantedShift oddsRatio(double oddsRatio) {
        return new WantedShift(Measure.ODDS_RATIO, oddsRatio);
    }

    public boolean isUp() {
        return value > 1;
    }

    /** The shift in log odds from a nominal limit. @throws PlanException where the factor passes 100 % */
    double logOddsFrom(double limit) {
        if (measure == Measure.ODDS_RATIO) {
            return Math.log(value);
        }
        if (!(value * limit < 1)) {
            throw new PlanException(String.format(Locale.ROOT, "A factor of %.4g on a nominal of %.4g at%% passes 100 "
                + "at%%; it must be below %.4g.", value, limit * 100, 1 / limit));
        }
        return NominalTest.logit(value * limit) - NominalTest.logit(limit);
    }
}
