package surfeit.segregation.phase;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Basis;
import surfeit.composition.Phase;
import surfeit.segregation.PhaseSpots;
import surfeit.segregation.answer.DiffractionMismatch;

/** Phases that spots show against phases that diffraction found; all of it invented. */
class DiffractionCheckTest {

    private static PhaseSpots onCopperSolution() {
        return PhaseSpots.on("ag-cu-eutectic").mass("P1", 92.4).mass("P1", 92.7).mass("P2", 92.5).mass("P2", 92.6);
    }

    private static PhaseSpots andOnSilverSolution() {
        PhaseSpots spots = onCopperSolution();
        for (double copper : new double[] {8.2, 8.3, 8.25, 8.4}) {
            spots.spot("matrix", copper < 8.3 ? "P1" : "P2", OptionalDouble.empty(), Basis.MASS, 100 - copper, copper);
        }
        return spots;
    }

    @Test
    void spots_and_diffraction_that_agree_leave_nothing_to_say() {
        assertThat(andOnSilverSolution().diffraction("(Ag)", "Cu").interpret().diffraction()).isEmpty();
    }

    @Test
    void without_diffraction_there_is_nothing_to_compare() {
        assertThat(andOnSilverSolution().interpret().diffraction()).isEmpty();
    }

    @Test
    void a_phase_only_the_spots_show_gets_its_possible_reasons() {
        List<DiffractionMismatch> found = andOnSilverSolution().diffraction("(Ag)").interpret().diffraction();
        assertThat(found).hasSize(1);
        DiffractionMismatch copper = found.get(0);
        assertThat(copper.phase()).isEqualTo("(Cu)");
        assertThat(copper.kind()).isEqualTo(DiffractionMismatch.Kind.SPOTS_ONLY);
        assertThat(copper.groups()).containsExactly("patch");
        assertThat(copper.possibleReasons()).hasSize(3);
        assertThat(copper.possibleReasons().get(0)).contains("amorphous", "too broad");
        assertThat(copper.possibleReasons().get(1)).contains("too little of it",
            "nominal composition would hold 23.9 %");
        assertThat(copper.possibleReasons().get(2)).contains("only at the surface");
    }

    /** NIST Ag-Cu at 779.1 °C: liquid 28.41, (Ag) 8.27, (Cu) 92.53 wt% Cu; by hand (92.53 - 28.41) / 84.26 = 0.7610. */
    @Test
    void the_amount_the_nominal_would_hold_is_that_of_the_phase_asked_about() {
        DiffractionMismatch silver = andOnSilverSolution().diffraction("(Cu)").interpret().diffraction().get(0);
        assertThat(silver.phase()).isEqualTo("(Ag)");
        assertThat(silver.groups()).containsExactly("matrix");
        assertThat(silver.possibleReasons().get(1)).contains("nominal composition would hold 76.1 %");
    }

    @Test
    void without_known_phases_diffraction_has_nothing_to_differ_from() {
        assertThat(onCopperSolution().phases(List.of()).diffraction("(Ag)").interpret().diffraction()).isEmpty();
    }

    @Test
    void a_phase_only_diffraction_shows_gets_its_possible_reasons() {
        List<DiffractionMismatch> found = onCopperSolution().diffraction("(Cu)", "(Ag)").interpret().diffraction();
        assertThat(found).extracting(DiffractionMismatch::phase).containsExactly("(Ag)");
        assertThat(found.get(0).kind()).isEqualTo(DiffractionMismatch.Kind.DIFFRACTION_ONLY);
        assertThat(found.get(0).groups()).isEmpty();
        assertThat(found.get(0).possibleReasons()).anyMatch(reason -> reason.contains("no spot was placed on it"))
            .anyMatch(reason -> reason.contains("inside the particles"))
            .anyMatch(reason -> reason.contains("finer than the X-ray source"));
    }

    @Test
    void a_mixture_shows_both_phases_but_a_homogeneous_one_would_read_alike() {
        List<DiffractionMismatch> found = PhaseSpots.on("ag-cu-eutectic").mass("P1", 28.3).mass("P1", 28.5)
            .mass("P2", 28.4)
            .mass("P2", 28.4).diffraction("(Ag)").interpret().diffraction();
        assertThat(found).extracting(DiffractionMismatch::phase).containsExactly("(Cu)");
        assertThat(found.get(0).possibleReasons()).anyMatch(reason -> reason.contains("one homogeneous phase"));
    }

    @Test
    void spots_that_may_be_the_phase_are_named() {
        List<DiffractionMismatch> found = PhaseSpots.on("ag-cu-eutectic").mass("P1", 92.5).diffraction("(Cu)")
            .interpret().diffraction();
        assertThat(found.get(0).groups()).containsExactly("patch");
        assertThat(found.get(0).possibleReasons().get(0)).contains("\"patch\" may be it");
    }

    @Test
    void spots_that_tell_nothing_but_lie_far_from_the_phase_are_not_named() {
        List<DiffractionMismatch> found = PhaseSpots.on("ag-cu-eutectic").mass("P1", 92.5).diffraction("(Ag)")
            .interpret().diffraction();
        assertThat(found).extracting(DiffractionMismatch::phase).containsExactly("(Ag)");
        assertThat(found.get(0).groups()).isEmpty();
        assertThat(found.get(0).possibleReasons().get(0)).isEqualTo("no spot was placed on it");
    }

    @Test
    void a_phase_nobody_knows_of_is_told_with_those_known() {
        List<DiffractionMismatch> found = onCopperSolution().diffraction("(Cu)", "Cu2O").interpret().diffraction();
        assertThat(found).extracting(DiffractionMismatch::kind)
            .containsExactly(DiffractionMismatch.Kind.NOT_A_KNOWN_PHASE);
        assertThat(found.get(0).phase()).isEqualTo("Cu2O");
        assertThat(found.get(0).possibleReasons().get(0)).contains("(Ag), (Cu)", "add it to the alloy");
    }

    @ParameterizedTest
    @CsvSource({"al-cu-eutectic, CuAl2, theta Al2Cu", "al-cu-eutectic, θ-Al2Cu, theta Al2Cu",
        "al-cu-eutectic, Al, (Al)",
        "ag-cu-eutectic, fcc Cu, (Cu)", "au-sn-eutectic, AuSn, delta AuSn", "sac305, beta-Sn, (beta-Sn)",
        "sac305, Cu6Sn5, Cu6Sn5", "in-sn-eutectic, InSn4, gamma InSn4", "zn-al-eutectic, (zn), (Zn)"})
    void names_of_a_phase_agree_by_their_formula(String alloy, String stated, String name) {
        List<Phase> phases = AlloyCatalogue.packaged().require(alloy).phases();
        assertThat(PhaseNames.meant(stated, phases)).extracting(Phase::name).containsExactly(name);
    }

    @ParameterizedTest
    @CsvSource({"al-cu-eutectic, AlCu", "ag-cu-eutectic, AgCu", "ag-cu-eutectic, amorphous", "sac305, Cu3Sn"})
    void other_formulas_mean_none(String alloy, String stated) {
        assertThat(PhaseNames.meant(stated, AlloyCatalogue.packaged().require(alloy).phases())).isEmpty();
    }
}
