package surfeit.segregation.depth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.segregation.PhaseSpots;
import surfeit.segregation.answer.SkinLimit;

/** The mass balance of a skin on a sphere; spots and sizes are invented. */
class SkinLimitTest {

    private static PhaseSpots copperRich(OptionalDouble beam) {
        PhaseSpots spots = PhaseSpots.on("ag-cu-eutectic");
        for (int p = 1; p <= 3; p++) {
            spots.spot("patch", "P" + p, beam, Basis.MASS, 40, 60).spot("patch", "P" + p, beam, Basis.MASS, 40, 60);
        }
        return spots;
    }

    /**
     * Ag-Cu of 28.41 wt% Cu, skin of 60 wt% Cu, 30 um: g = 0.2841/0.6 = 0.4735 of the mass. Volumes per gram with 10.49
     * and 8.96 g/cm3: skin 0.105096, alloy 0.099954 cm3; v = 0.49786; t = 15 (1 - 0.50214^(1/3)) = 3.0776 um. By hand.
     */
    @Test
    void the_skin_holds_no_more_copper_than_the_whole_particle() {
        SkinLimit limit = copperRich(OptionalDouble.empty()).diameterUm(30).group().skinLimit().orElseThrow();
        assertThat(limit.element().symbol()).isEqualTo("Cu");
        assertThat(limit.thicknessNm()).isCloseTo(3077.6, within(5.0));
        assertThat(limit.mostNm()).isBetween(3100.0, 3900.0);
        assertThat(limit.mostMassShare()).isBetween(0.4735, 0.56);
        assertThat(limit.sampledDepthNm()).isEmpty();
        assertThat(limit.cannotCoverParticle()).isFalse();
    }

    @Test
    void thickness_grows_as_the_particle_does() {
        SkinLimit small = copperRich(OptionalDouble.empty()).diameterUm(10).group().skinLimit().orElseThrow();
        SkinLimit large = copperRich(OptionalDouble.empty()).diameterUm(50).group().skinLimit().orElseThrow();
        assertThat(large.thicknessNm() / small.thicknessNm()).isCloseTo(5, within(1e-9));
    }

    /**
     * 60 wt% Cu at 15 keV is read from some hundred nm (depth of 90 % of Cu Ka in Cu: 361 nm); 0.5 um particles hold
     * less.
     */
    @Test
    void a_skin_thinner_than_the_spots_read_cannot_cover_the_particle() {
        SkinLimit limit = copperRich(OptionalDouble.of(15)).diameterUm(0.5).group().skinLimit().orElseThrow();
        assertThat(limit.sampledDepthNm().orElseThrow()).isBetween(250.0, 500.0);
        assertThat(limit.mostNm()).isLessThan(100);
        assertThat(limit.cannotCoverParticle()).isTrue();
        assertThat(copperRich(OptionalDouble.of(15)).diameterUm(30).group().skinLimit().orElseThrow()
            .cannotCoverParticle()).isFalse();
    }

    /**
     * Pure copper: g = 0.2841; v = 0.2841 / 8.96 / 0.099954 = 0.31723; t = 15 (1 - 0.68277^(1/3)) = 1.7916 um. By hand.
     */
    @Test
    void a_skin_in_which_the_other_element_is_not_detected_counts_as_pure() {
        SkinLimit limit = PhaseSpots.on("ag-cu-eutectic").diameterUm(30)
            .spot("patch", "P1", OptionalDouble.empty(), Basis.MASS, Double.NaN, 100)
            .spot("patch", "P2", OptionalDouble.empty(), Basis.MASS, Double.NaN, 100)
            .spot("patch", "P3", OptionalDouble.empty(), Basis.MASS, Double.NaN, 100).group().skinLimit().orElseThrow();
        assertThat(limit.thicknessNm()).isCloseTo(1791.6, within(15.0));
    }

    @Test
    void nothing_is_said_without_a_diameter_a_sphere_or_an_enrichment() {
        assertThat(copperRich(OptionalDouble.empty()).group().skinLimit()).isEmpty();
        assertThat(copperRich(OptionalDouble.empty()).diameterUm(30).polished().group().skinLimit()).isEmpty();
        assertThat(PhaseSpots.on("ag-cu-eutectic").diameterUm(30).mass("P1", 28.4).mass("P1", 28.3).group().skinLimit())
            .isEmpty();
    }

    @Test
    void a_limit_without_sense_is_refused() {
        assertThatThrownBy(() -> new SkinLimit(surfeit.element.Element.of("Cu"), 1.5, 10, 20, OptionalDouble.empty()))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("1.5");
    }
}
