package surfeit.calibration;

/** How particles and spots scatter about their mean; every kind has mean 0 and variance 1. */
enum Scatter {
    NORMAL("normal") {
        @Override
        double draw(Dice dice) {
            return dice.normal();
        }
    },
    /** t with four degrees of freedom, cut at eight standard deviations so that no fraction leaves 0..1. */
    HEAVY("heavy-tailed") {
        @Override
        double draw(Dice dice) {
            double chiSquare = -2 * StrictMath.log(dice.uniform() * dice.uniform());
            double t = dice.normal() / Math.sqrt(chiSquare / T_DEGREES_OF_FREEDOM);
            double standard = t / Math.sqrt(T_DEGREES_OF_FREEDOM / (T_DEGREES_OF_FREEDOM - 2));
            return Math.max(-CUT, Math.min(CUT, standard));
        }
    },
    /** Lognormal with a standard deviation of 0.5 of the logarithm: skewness 1.75. */
    SKEWED("skewed") {
        @Override
        double draw(Dice dice) {
            double variance = LOG_DEVIATION * LOG_DEVIATION;
            double mean = StrictMath.exp(variance / 2);
            double deviation = mean * Math.sqrt(StrictMath.expm1(variance));
            return (StrictMath.exp(LOG_DEVIATION * dice.normal()) - mean) / deviation;
        }
    };

    private static final double T_DEGREES_OF_FREEDOM = 4;
    private static final double CUT = 8;
    private static final double LOG_DEVIATION = 0.5;

    private final String word;

    Scatter(String word) {
        this.word = word;
    }

    abstract double draw(Dice dice);

    boolean isSymmetric() {
        return this != SKEWED;
    }

    String word() {
        return word;
    }
}
