package surfeit.rival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.segregation.PhaseSpots;

/**
 * What a patch smaller than the X-ray source could do and may hold itself, from the share of the signal it is told to
 * give (that share is held to a simulation elsewhere). Spots are invented; the rest is mass balance by hand.
 */
class PatchBoundsTest {
    private static final OptionalDouble BEAM = OptionalDouble.of(20);

    private static PhaseSpots spots(String alloy, double sizeUm, double... massPercent) {
        return add(PhaseSpots.on(alloy).featureSizeUm(sizeUm), "patch", massPercent);
    }

    private static PhaseSpots add(PhaseSpots spots, String feature, double... massPercent) {
        for (String particle : new String[] {"P1", "P2", "P3"}) {
            for (double off : new double[] {-0.1, 0.1}) {
                double[] spot = massPercent.clone();
                spot[0] += off;
                spot[1] -= off;
                spots.spot(feature, particle, BEAM, Basis.MASS, spot);
            }
        }
        return spots;
    }

    private static Rival patch(PhaseSpots spots, String element) {
        return spots.group().rivals().stream()
            .filter(rival -> rival.code() == Cause.SMALL_PATCH && rival.element().equals(Optional.of(Element.of(element))))
            .findFirst().orElseThrow();
    }

    /**
     * 60 wt% Cu seen, 28.41 wt% around, 78.5 to 52.2 % of the signal from the patch: it holds 28.41 + 31.59 / share =
     * 68.65 to 88.93 wt%, 78.8 to 93.2 at%. Nominal of which 52.2 % are seen in pure copper reads 62.63 wt%, 73.99 at%,
     * 1.838 times nominal.
     */
    @Test
    void a_patch_may_hold_more_than_it_shows_and_copper_around_it_is_the_most_that_could_show() {
        Rival patch = patch(spots("ag-cu-eutectic", 0.5, 40, 60), "Cu");
        assertThat(patch.assumes()).startsWith("52.2 to 78.5 % of the signal of Cu come from a round patch of 0.5 \u00b5m. "
            + "With surroundings of nominal composition the patch itself would hold 78.8 to 93.2 at% Cu;");
        assertThat(patch.largestFactor().orElseThrow()).isCloseTo(1.838, within(0.002));
        assertThat(patch.couldExplain()).isEqualTo(Rival.CouldExplain.IN_PART);
    }

    /**
     * Tin of solder, 80 wt% seen: 96.5 - 16.5 / share is 67.7 to 58.5 wt%, with silver and copper as 19.35 to 0.65 in the
     * rest 65.0 to 55.6 at%. Nominal of which 43.4 % are seen, silver and copper as 3 to 0.5 around it: 0.390 of nominal.
     */
    @Test
    void in_three_elements_the_others_fill_the_rest_as_they_were_measured() {
        Rival patch = patch(spots("sac305", 0.5, 80, 19.35, 0.65), "Sn");
        assertThat(patch.assumes()).startsWith("43.4 to 57.2 % of the signal of Sn come from a round patch of 0.5 \u00b5m.")
            .contains("the patch itself would hold 55.6 to 65 at% Sn;");
        assertThat(patch.largestFactor().orElseThrow()).isCloseTo(0.390, within(0.001));
    }

    /** With 15 wt% Cu around: 15 + 45 / share is 72.3 to 101.2 wt%: 81.6 at% at least, and pure copper is not excluded. */
    @Test
    void the_surroundings_are_those_measured_where_there_are_any() {
        PhaseSpots spots = add(spots("ag-cu-eutectic", 0.5, 40, 60), "matrix", 85, 15);
        assertThat(patch(spots, "Cu").assumes())
            .contains("With surroundings as in matrix the patch itself would hold 81.6 to 100 at% Cu;");
    }

    /** The smaller the particle, the less of it absorbs: in the limit each line gains what the thick alloy takes of it. */
    @ParameterizedTest
    @CsvSource({"20, 0.06", "5, 0.06"})
    void a_particle_too_thin_to_absorb_shows_each_line_as_the_thick_alloy_makes_it(double diameterNm, double tolerance) {
        GroupPhysics physics = Nominals.physics("Al:87.8,Si:12.2", 15);
        LineSignal aluminium = physics.signal(0).orElseThrow();
        LineSignal silicon = physics.signal(1).orElseThrow();
        double limit = Math.log(aluminium.profile().absorptionFactor(aluminium.chi())
            / silicon.profile().absorptionFactor(silicon.chi()));
        assertThat(limit).isGreaterThan(0.5);
        assertThat(physics.thinReach(diameterNm, Nominals.shift(physics, "Si", 1.3))).isCloseTo(limit, within(tolerance));
        assertThat(physics.thinReach(diameterNm, Nominals.shift(physics, "Si", 0.8))).isZero();
    }
}
