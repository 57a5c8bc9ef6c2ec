package surfeit.segregation.plan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import surfeit.element.Element;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.Scope;

/**
 * How much to measure so that a wanted shift is shown, what a given number can show, and what else would help.
 *
 * <p>Log odds throughout where not said otherwise; fractions are atomic. Powers hold for one element of one group
 * tested against nominal, at the scatter stated; a shift inside the margin is shown as "consistent" with a small shift.
 *
 * @param element          the element in question
 * @param nominal          the nominal limit the shift counts from
 * @param wantedFactor     wanted mean over that limit
 * @param wantedOddsRatio  the same as an odds ratio
 * @param spotsPerParticle spots on each particle
 * @param power            wanted chance of showing the shift
 * @param alpha            risk of a false flag over all tests of the answer
 * @param tests            tests in the answer
 * @param scatter          standard deviations counted with
 * @param sharedUncertainty calibration error at the wanted mean, one standard uncertainty, the nominal's tolerance
 *                         included; it does not shrink with particles or spots
 * @param referenceSpots   reference spots counted with
 * @param particles        particles that show the wanted shift; empty where no number does (or more than a thousand)
 * @param particlesIfScatterIsHigh the same should the scatter be as large as the pilot leaves open (one-sided 80 %)
 * @param bySpots          particles needed for one to six spots a particle
 * @param curve            power by number of particles
 * @param given            what the given number of particles shows
 * @param givenInWords     the same in one sentence
 * @param limit            what no number of particles can beat
 * @param remedies         what would help, in the order of advice
 * @param answer           the result in one sentence
 * @param advice           sentences in the order they should be followed: reference spots, particles, last spots
 * @param caveats          what a reader must know beside
 */
public record MeasurementPlan(Element element, double nominal, double wantedFactor, double wantedOddsRatio,
                              int spotsPerParticle, double power, double alpha, int tests, ParticleScatter scatter,
                              double sharedUncertainty, int referenceSpots, OptionalInt particles,
                              OptionalInt particlesIfScatterIsHigh, List<SpotsRow> bySpots, List<CurvePoint> curve,
                              Optional<Given> given, Optional<String> givenInWords, Limit limit,
                              List<Remedy> remedies, String answer, List<String> advice, List<Caveat> caveats) {

    /** Particles needed with this many spots on each; empty where no number suffices. */
    public record SpotsRow(int spotsPerParticle, OptionalInt particles) {
        /** Spots in all. */
        public OptionalInt spots() {
            return particles.isEmpty() ? particles : OptionalInt.of(particles.getAsInt() * spotsPerParticle);
        }
    }

    /** Chance of showing the wanted shift with this many particles. */
    public record CurvePoint(int particles, double power) {
    }

    /**
     * What a given number of particles shows.
     *
     * @param scope                what it speaks about: particles of the kind from three on, else these particles
     * @param power                chance of showing the wanted shift; empty where nothing would tell the scatter
     * @param smallestFactorUp     smallest enrichment shown with the wanted power
     * @param smallestFactorDown   largest depletion factor (nearest to 1) shown with it; empty where there may be none
     * @param smallestOddsRatio    the same as an odds ratio, in the wanted direction
     * @param powerForConsistent   chance of showing "consistent" at the sample's margin where there is no shift
     * @param smallestMarginOddsRatio smallest margin at which that chance reaches the wanted power
     */
    public record Given(int particles, int spotsPerParticle, Scope scope, OptionalDouble power,
                        OptionalDouble smallestFactorUp, OptionalDouble smallestFactorDown,
                        OptionalDouble smallestOddsRatio, OptionalDouble powerForConsistent,
                        OptionalDouble smallestMarginOddsRatio) {
    }

    /**
     * What no number of particles can beat, because the calibration error does not shrink.
     *
     * @param smallestFactor     smallest shift shown with the wanted power, in the wanted direction, as a factor; empty
     *                           where no composition differs so much
     * @param smallestOddsRatio  the same as an odds ratio
     * @param marginOddsRatio    the sample's margin
     * @param smallestMarginOddsRatio smallest margin at which "consistent" can be shown with the wanted power; empty where
     *                           none that a sample takes is large enough
     * @param particlesForConsistent particles that show it at the sample's margin; empty where no number does
     */
    public record Limit(OptionalDouble smallestFactor, OptionalDouble smallestOddsRatio, double marginOddsRatio,
                        OptionalDouble smallestMarginOddsRatio, OptionalInt particlesForConsistent) {
        public boolean consistentIsReachable() {
            return smallestMarginOddsRatio.isPresent() && smallestMarginOddsRatio.getAsDouble() <= marginOddsRatio;
        }
    }

    /**
     * Something that makes the calibration error smaller.
     *
     * @param sharedUncertainty calibration error that is left, in log odds
     * @param particles         particles that then show the wanted shift; empty where no number does
     * @param smallestFactor    what no number of particles can beat then; empty as in {@link Limit}
     */
    public record Remedy(Kind kind, double sharedUncertainty, OptionalInt particles, OptionalDouble smallestFactor) {
        /** What to do, in the order of advice. */
        public enum Kind {
            /** Five spots on a piece of known composition in the same session. */
            REFERENCE_SPOTS("reference spots"),
            /** Quantify with standards. */
            STANDARDS("standards"),
            /** Ask whether two features of the same particles differ, in place of each against nominal. */
            CONTRAST("contrast");

            private final String word;

            Kind(String word) {
                this.word = word;
            }

            public String word() {
                return word;
            }
        }
    }

    /** Whether any number of particles up to a thousand shows the wanted shift with these spots a particle. */
    public boolean isReachable() {
        return particles.isPresent();
    }
}
