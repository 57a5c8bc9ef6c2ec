package surfeit.segregation.plan;

import java.util.OptionalInt;
import surfeit.element.Element;

/**
 * What a measurement is planned for.
 *
 * @param element          the element in question
 * @param wanted           the shift that is to be shown
 * @param spotsPerParticle spots on each particle
 * @param particles        a number of particles to be judged, if one is given or affordable
 * @param referenceSpots   spots on a piece of known composition in the same session; 0 for none. A pilot that has them
 *                         counts with its own
 * @param power            chance of showing the shift, 0.8 by convention
 * @param tests            tests in the answer the shift is to be shown in; each then counts with the risk alpha over
 *                         this number, as the first of Holm's does. A pilot's own number where it is not given, else 1
 */
public record PlanGoal(Element element, WantedShift wanted, int spotsPerParticle, OptionalInt particles,
                       int referenceSpots, double power, OptionalInt tests) {
    /** Three spots show the scatter on a particle and survive a bad one. Judgement. */
    public static final int DEFAULT_SPOTS_PER_PARTICLE = 3;
    /** By convention (Cohen 1988, from memory). */
    public static final double DEFAULT_POWER = 0.8;
    private static final int MOST = 1000;

    public PlanGoal {
        requireCount(1, spotsPerParticle, "Spots per particle");
        requireCount(1, particles.orElse(1), "Particles");
        requireCount(0, referenceSpots, "Reference spots");
        requireCount(1, tests.orElse(1), "Tests");
        if (!(power >= 0.5 && power <= 0.999)) {
            throw new PlanException("The wanted power lies from 0.5 to 0.999, got " + power + ".");
        }
    }

    /** The usual three spots a particle, power 0.8, nothing else stated. */
    public static PlanGoal of(Element element, WantedShift wanted) {
        return new PlanGoal(element, wanted, DEFAULT_SPOTS_PER_PARTICLE, OptionalInt.empty(), 0, DEFAULT_POWER,
            OptionalInt.empty());
    }

    public PlanGoal withSpotsPerParticle(int number) {
        return new PlanGoal(element, wanted, number, particles, referenceSpots, power, tests);
    }

    public PlanGoal withParticles(int number) {
        return new PlanGoal(element, wanted, spotsPerParticle, OptionalInt.of(number), referenceSpots, power, tests);
    }

    public PlanGoal withReferenceSpots(int number) {
        return new PlanGoal(element, wanted, spotsPerParticle, particles, number, power, tests);
    }

    public PlanGoal withTests(int number) {
        return new PlanGoal(element, wanted, spotsPerParticle, particles, referenceSpots, power,
            OptionalInt.of(number));
    }

    private static void requireCount(int fewest, int number, String what) {
        if (number < fewest || number > MOST) {
            throw new PlanException(what + " are " + fewest + " to " + MOST + ", got " + number + ".");
        }
    }
}
