package surfeit.segregation.phase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Basis;
import surfeit.composition.NominalText;
import surfeit.composition.Phase;
import surfeit.composition.SourceRead;
import surfeit.element.Element;
import surfeit.segregation.PhaseSpots;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.PhaseReading;
import surfeit.segregation.answer.SpotSpread;

/** Groups read against handbook phases; the spots are invented. */
class PhaseReaderTest {
    private static final double NOT_DETECTED = Double.NaN;

    private static PhaseSpots silverCopper() {
        return PhaseSpots.on("ag-cu-eutectic");
    }

    private static PhaseReading.OnTieLine line(PhaseReading reading) {
        return reading.tieLine().orElseThrow();
    }

    /**
     * NIST Ag-Cu at 779.1 °C: liquid 28.41, (Ag) 8.27, (Cu) 92.53 wt% Cu; by hand 20.14 / 84.26 = 0.23902 of the mass.
     */
    @Test
    void spots_at_the_silver_copper_eutectic_are_a_mixture_with_the_handbook_share_of_copper_solution() {
        PhaseReading reading = silverCopper().mass("P1", 28.39).mass("P1", 28.43).mass("P2", 28.40).mass("P2", 28.42)
            .mass("P3", 28.41).mass("P3", 28.41).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.MIXTURE);
        assertThat(line(reading).to().name()).isEqualTo("(Cu)");
        assertThat(line(reading).shareOfMass().value()).isCloseTo(0.23902, within(2e-5));
        assertThat(line(reading).shareOfMass().low()).isBetween(0.21, 0.2390);
        assertThat(line(reading).shareOfMass().high()).isBetween(0.2390, 0.27);
        assertThat(line(reading).nominal().orElseThrow().ofMass()).isCloseTo(0.23902, within(5e-6));
        // With 10.3 and 9.1 g/cm3: (0.23902/9.1) / (0.23902/9.1 + 0.76098/10.3) = 0.26225, by hand.
        assertThat(line(reading).shareOfVolume().orElseThrow().value()).isCloseTo(0.26225, within(5e-5));
        assertThat(reading.phases()).noneMatch(PhaseReading.Fit::fits);
        assertThat(reading.detail()).startsWith("Lies between (Ag) and (Cu): 23.9 % of its mass (")
            .contains("an alloy of nominal composition would hold 23.9 %", "read alike");
    }

    /**
     * Invented spots at the foot of a tin-bismuth joint on copper: Cu6Sn5 (54.5 at% Cu by its formula) with next to no
     * bismuth. Of tin and bismuth alone it would be taken for tin.
     */
    @Test
    void spots_with_much_of_an_element_that_no_known_phase_holds_are_no_known_phase() {
        PhaseSpots spots = PhaseSpots.on("bi-sn-eutectic").beside("Cu", 54.5);
        for (String piece : List.of("A", "B", "C")) {
            spots.spot("interface", piece, OptionalDouble.empty(), Basis.ATOMIC, 0.8, 44.7)
                .spot("interface", piece, OptionalDouble.empty(), Basis.ATOMIC, 0.9, 44.6);
        }
        PhaseReading reading = spots.reading();

        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.CANNOT_TELL);
        assertThat(reading.heldByNone()).containsExactly(Element.of("Cu"));
        assertThat(reading.mainElement()).isEmpty();
        assertThat(reading.detail()).startsWith("None of ").contains("holds Cu, 54.5 at% of everything reported");
    }

    /** The same with carbon, as from a rinse: it may lie on everything and hides no phase. */
    @Test
    void carbon_beside_the_nominal_hides_no_phase() {
        PhaseSpots spots = PhaseSpots.on("bi-sn-eutectic").beside("C", 20);
        for (String piece : List.of("A", "B", "C")) {
            spots.spot("grain", piece, OptionalDouble.empty(), Basis.ATOMIC, 0.9, 79.1)
                .spot("grain", piece, OptionalDouble.empty(), Basis.ATOMIC, 1.0, 79.0);
        }

        assertThat(spots.reading().kind()).isEqualTo(PhaseReading.Kind.ONE_PHASE);
    }

    /** NIST Pb-Sn at 182.2 °C: liquid 62.13, (Pb) 18.91, (Sn) 96.59 wt% Sn; by hand 34.46 / 77.68 = 0.44361 is (Pb). */
    @Test
    void spots_at_the_tin_lead_eutectic_are_44_percent_lead_solution_by_mass() {
        PhaseReading reading = PhaseSpots.on("sn-pb-eutectic").standardless().mass("P1", 37.85).mass("P1", 37.89)
            .mass("P2", 37.87).mass("P2", 37.87).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.MIXTURE);
        assertThat(line(reading).from().name()).isEqualTo("(Pb)");
        assertThat(1 - line(reading).shareOfMass().value()).isCloseTo(0.44361, within(2e-5));
    }

    /** Murray and McAlister: 12.2 at% Si; (Al) 1.5 at% Si from memory: (12.2 - 1.5) / 98.5 = 0.10863 of the atoms. */
    @Test
    void spots_at_the_aluminium_silicon_eutectic_are_eleven_percent_silicon() {
        PhaseReading reading = PhaseSpots.on("al-si-eutectic").standardless().atomic("P1", 12.1).atomic("P1", 12.3)
            .atomic("P2", 12.2).atomic("P2", 12.2).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.MIXTURE);
        assertThat(line(reading).shareOfAtoms().value()).isCloseTo(0.10863, within(2e-5));
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void spots_at_the_composition_of_a_solid_solution_fit_it_alone(boolean standardless) {
        PhaseSpots spots = silverCopper().mass("P1", 92.4).mass("P1", 92.7).mass("P2", 92.5).mass("P2", 92.6)
            .mass("P3", 92.3).mass("P3", 92.6);
        PhaseReading reading = (standardless ? spots.standardless() : spots).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.ONE_PHASE);
        assertThat(reading.phases()).filteredOn(PhaseReading.Fit::fits).extracting(fit -> fit.phase().name())
            .containsExactly("(Cu)");
        assertThat(line(reading).shareOfAtoms().low()).isBetween(0.9, 0.999);
        assertThat(reading.detail()).startsWith("Fits (Cu) and no other known phase. At least ")
            .contains("the rest may be (Ag)", "without any segregation");
    }

    /** A solid solution rejects the other element on cooling: less of it is still the same phase. */
    @Test
    void a_purer_solution_is_the_same_phase_and_purity_is_told_as_a_bound() {
        PhaseReading reading = silverCopper().mass("P1", 99.1).mass("P1", 99.3).mass("P2", 99.2).mass("P2", 99.2)
            .mass("P3", 99.2).mass("P3", 99.2).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.ONE_PHASE);
        PhaseReading.AtLeast main = reading.mainElement().orElseThrow();
        assertThat(main.element().symbol()).isEqualTo("Cu");
        assertThat(main.atomicFraction()).isBetween(0.98, 0.9953);
        assertThat(reading.detail()).contains("at% Cu (95 % bound); nothing more is said of its purity")
            .doesNotContain("100 %");
    }

    @Test
    void an_element_nowhere_detected_does_not_make_the_other_pure() {
        PhaseReading reading = PhaseSpots.on("al-si-eutectic").spot("patch", "P1", OptionalDouble.empty(), Basis.ATOMIC,
            NOT_DETECTED, 100)
            .spot("patch", "P1", OptionalDouble.empty(), Basis.ATOMIC, NOT_DETECTED, 100).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.ONE_PHASE);
        assertThat(reading.phases()).filteredOn(PhaseReading.Fit::fits).extracting(fit -> fit.phase().name())
            .containsExactly("(Si)");
        assertThat(reading.mainElement().orElseThrow().atomicFraction()).isLessThan(0.998);
    }

    @Test
    void spots_in_two_clusters_at_both_phases_are_named_as_such_and_not_averaged() {
        PhaseReading reading = silverCopper().standardless().mass("P1", 8.3).mass("P1", 92.6).mass("P2", 8.1)
            .mass("P2", 92.6)
            .mass("P3", 7.6).mass("P3", 91.6).mass("P3", 8.6).mass("P4", 93.6).mass("P4", 92.2).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.ONE_OR_THE_OTHER);
        assertThat(line(reading).spots().clusters().orElseThrow().lowerCount()).isEqualTo(4);
        assertThat(line(reading).spots().clusters().orElseThrow().upperCount()).isEqualTo(5);
        assertThat(reading.detail()).contains("4 at (Ag) and 5 at (Cu): the beam hit one phase or the other",
            "no measure of how much of it there is");
    }

    @Test
    void a_few_scattered_spots_do_not_tell() {
        PhaseReading reading = silverCopper().mass("P1", 8.3).mass("P1", 92.6).mass("P2", 40).mass("P2", 60).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.CANNOT_TELL);
        assertThat(reading.detail())
            .contains("4 spots lie from 0.00 to 1.00 of the way from (Ag) to (Cu) (1 at the first, 1 at the second)");
    }

    @Test
    void many_spots_spread_along_the_line_are_a_mixture_whose_spread_is_told() {
        PhaseSpots spots = silverCopper();
        for (int i = 0; i < 15; i++) {
            spots.mass("P" + i % 5, 20 + 4 * i);
        }
        PhaseReading reading = spots.reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.MIXTURE);
        assertThat(line(reading).spots().pattern()).isEqualTo(SpotSpread.Pattern.SPREAD);
        assertThat(reading.detail()).contains("each took in another share of both");
    }

    @Test
    void one_spot_without_its_uncertainty_excludes_nothing_but_says_where_it_lies() {
        PhaseReading reading = silverCopper().mass("P1", 92.5).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.CANNOT_TELL);
        assertThat(reading.phases()).allMatch(fit -> fit.pAdjusted().isEmpty());
        assertThat(line(reading).position().value()).isCloseTo(1, within(0.001));
        assertThat(reading.detail()).contains("Nothing tells the scatter",
            "The calibration error alone would leave (Cu).");
    }

    @Test
    void a_group_that_may_be_several_phases_is_not_called_any_of_them() {
        PhaseReading reading = silverCopper().mass("P1", 20).mass("P2", 80).mass("P2", 78).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.CANNOT_TELL);
    }

    @Test
    void between_three_phases_of_a_binary_the_neighbours_make_the_mixture() {
        List<Phase> own = List.of(own("(Ag)", "Ag:100,Cu:0"), own("middle", "Ag:50,Cu:50"), own("(Cu)", "Ag:0,Cu:100"));
        PhaseReading reading = silverCopper().phases(own).atomic("P1", 70).atomic("P1", 70.2).atomic("P2", 69.9)
            .atomic("P2", 70.1).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.MIXTURE);
        assertThat(line(reading).from().name()).isEqualTo("middle");
        assertThat(line(reading).shareOfAtoms().value()).isCloseTo(0.401, within(1e-3));
    }

    @Test
    void what_lies_beyond_a_compound_fits_nothing() {
        List<Phase> own = List.of(own("epsilon", "Ag:70,Cu:30"), own("middle", "Ag:50,Cu:50"));
        PhaseReading reading = silverCopper().phases(own).atomic("P1", 80).atomic("P1", 80.2).atomic("P2", 79.9)
            .atomic("P2", 80.1).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.NEITHER);
        assertThat(reading.detail())
            .isEqualTo("Fits none of epsilon, middle and no mixture of them. It lies beyond middle.");
        PhaseReading poorer = silverCopper().phases(own).atomic("P1", 20).atomic("P1", 20.2).atomic("P2", 19.9)
            .atomic("P2", 20.1).reading();
        assertThat(poorer.detail()).endsWith("It lies beyond epsilon.");
    }

    @Test
    void an_element_that_no_known_phase_holds_is_named_where_none_fits() {
        List<Phase> own = List.of(ofTinAndSilver("Ag3Sn", "Ag:75,Sn:25"), ofTinAndSilver("(Sn)", "Ag:0,Sn:100"));
        PhaseReading reading = PhaseSpots.on("sac305").phases(own)
            .spot("patch", "P1", OptionalDouble.empty(), Basis.ATOMIC, 60, 20, 20)
            .spot("patch", "P1", OptionalDouble.empty(), Basis.ATOMIC, 60.2, 19.9, 19.9).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.NEITHER);
        assertThat(reading.heldByNone()).containsExactly(Element.of("Cu"));
        assertThat(reading.detail()).endsWith("and no mixture of them. None of these phases holds Cu.");
    }

    private static Phase ofTinAndSilver(String name, String composition) {
        return Phase.of("Ag-Sn", name, NominalText.parse(composition, Basis.ATOMIC), OptionalDouble.empty(), "compound",
            OptionalDouble.empty(), "invented", SourceRead.NO);
    }

    /**
     * From three particles on shares speak about particles of the kind, as the group's row does, not only about those
     * measured. Ends computed in Python from the rules as written in prose: scatter of the particle means, 3 degrees of
     * freedom, u = 0.0355 in log odds, phases 0.5 at% off.
     */
    @Test
    void shares_hold_for_particles_of_the_kind_where_three_or_more_were_measured() {
        PhaseReading reading = silverCopper().phases(List.of(own("silver-rich", "Ag:86,Cu:14"), own("copper-rich", "Ag:5,Cu:95")))
            .atomic("P1", 49.8).atomic("P1", 50.2).atomic("P2", 47.8).atomic("P2", 48.2).atomic("P3", 45.8)
            .atomic("P3", 46.2).atomic("P4", 43.8).atomic("P4", 44.2).reading();
        assertThat(line(reading).position().value()).isCloseTo(0.407407, within(1e-6));
        assertThat(line(reading).position().low()).isCloseTo(0.356798, within(1e-6));
        assertThat(line(reading).position().high()).isCloseTo(0.458514, within(1e-6));
    }

    /** As above with three elements: the position as a weighted sum of the fractions, its scatter that of the particles. */
    @Test
    void with_three_elements_shares_hold_for_particles_of_the_kind_too() {
        PhaseSpots spots = PhaseSpots.on("sac305").phases(List.of(ofThree("soft", "Sn:80,Ag:15,Cu:5"),
            ofThree("hard", "Sn:20,Ag:50,Cu:30")));
        for (int particle = 0; particle < 4; particle++) {
            for (double shift : new double[] {-0.01, 0.01}) {
                double share = new double[] {0.36, 0.40, 0.44, 0.42}[particle] + shift;
                spots.spot("patch", "P" + particle, OptionalDouble.empty(), Basis.ATOMIC, 80 - 60 * share,
                    15 + 35 * share, 5 + 25 * share);
            }
        }
        PhaseReading.OnTieLine line = line(spots.reading());
        assertThat(line.position().low()).isCloseTo(0.350227, within(1e-6));
        assertThat(line.position().high()).isCloseTo(0.459773, within(1e-6));
    }

    private static Phase ofThree(String name, String composition) {
        return Phase.of("Ag-Cu-Sn", name, NominalText.parse(composition, Basis.ATOMIC), OptionalDouble.empty(), "compound",
            OptionalDouble.empty(), "invented", SourceRead.NO);
    }

    /** The bound of what makes up nearly all is the lower end of the row's interval. */
    @Test
    void the_bound_of_what_makes_up_nearly_all_is_that_of_the_row() {
        PhaseSpots spots = silverCopper().atomic("P1", 1.9).atomic("P1", 2.1).atomic("P2", 2.9).atomic("P2", 3.1)
            .atomic("P3", 3.9).atomic("P3", 4.1);
        double low = spots.interpret().groups().get(0).elements().get(0).outcome().low();
        assertThat(spots.reading().mainElement().orElseThrow().atomicFraction()).isEqualTo(low);
    }

    private static Phase own(String name, String composition) {
        return Phase.of("Ag-Cu", name, NominalText.parse(composition, Basis.ATOMIC), OptionalDouble.empty(), "compound",
            OptionalDouble.empty(), "invented", SourceRead.NO);
    }

    @Test
    void a_phase_of_a_subsystem_fits_in_an_alloy_of_three_elements() {
        PhaseReading reading = PhaseSpots.on("sac305").standardless().spot("patch", "P1", OptionalDouble.empty(),
            Basis.ATOMIC, 45.6, 0.4, 54)
            .spot("patch", "P1", OptionalDouble.empty(), Basis.ATOMIC, 45.2, 0.3, 54.5)
            .spot("patch", "P2", OptionalDouble.empty(), Basis.ATOMIC, 45.5, 0.3, 54.2).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.ONE_PHASE);
        assertThat(reading.phases()).filteredOn(PhaseReading.Fit::fits).extracting(fit -> fit.phase().name())
            .containsExactly("Cu6Sn5");
        assertThat(line(reading).from().name()).isEqualTo("(beta-Sn)");
    }

    /** By hand: 83 at% Sn with the rest Ag lies (83 - 25) / 75 = 0.7733 of the way from Ag3Sn to Sn, in atoms. */
    @Test
    void with_three_elements_a_mixture_lies_on_the_line_within_its_uncertainty() {
        PhaseReading reading = PhaseSpots.on("sac305").spot("patch", "P1", OptionalDouble.empty(), Basis.ATOMIC, 83,
            16.9, 0.1)
            .spot("patch", "P1", OptionalDouble.empty(), Basis.ATOMIC, 83.2, 16.7, 0.1)
            .spot("patch", "P2", OptionalDouble.empty(), Basis.ATOMIC, 82.8, 17.1, 0.1).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.MIXTURE);
        assertThat(line(reading).from().name()).isEqualTo("Ag3Sn");
        assertThat(line(reading).to().name()).isEqualTo("(beta-Sn)");
        assertThat(line(reading).position().value()).isCloseTo(0.7733, within(0.002));
        assertThat(line(reading).nominal()).isEmpty();
        assertThat(line(reading).beside()).isBetween(0.0005, 0.003);
    }

    @Test
    void what_two_phases_do_not_make_three_may() {
        PhaseReading reading = PhaseSpots.on("sac305").spot("patch", "P1", OptionalDouble.empty(), Basis.MASS, 70, 15,
            15)
            .spot("patch", "P1", OptionalDouble.empty(), Basis.MASS, 70.4, 15, 14.6).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.MIXTURE);
        assertThat(reading.tieLine()).isEmpty();
        assertThat(reading.ofThree()).hasSize(3);
        assertThat(reading.ofThree().stream().mapToDouble(PhaseReading.MassShare::ofMass).sum())
            .isCloseTo(1, within(1e-12));
        // Ag only in Ag3Sn, 73.2 % of its mass, by hand: 3 x 107.868 / (3 x 107.868 + 118.71).
        assertThat(reading.ofThree().get(0).ofMass()).isCloseTo(0.15 / 0.7316, within(0.001));
        assertThat(reading.detail())
            .startsWith("Fits no mixture of two known phases; a mixture of three would read so: about 20.5 % of its mass Ag3Sn, ");
    }

    @Test
    void more_groups_exclude_a_phase_less_easily() {
        PhaseSpots one = silverCopper().mass("P1", 12.6).mass("P1", 13.2).mass("P1", 12.9);
        double alone = one.reading().phases().get(0).pAdjusted().orElseThrow();
        one.spot("matrix", "P1", OptionalDouble.empty(), Basis.MASS, 72, 28)
            .spot("matrix", "P1", OptionalDouble.empty(), Basis.MASS, 71, 29);
        assertThat(one.reading().phases().get(0).pAdjusted().orElseThrow()).isCloseTo(2 * alone, within(1e-12));
    }

    @Test
    void without_known_phases_there_is_no_reading() {
        assertThat(silverCopper().phases(List.of()).mass("P1", 28).mass("P1", 29).group().phaseReading()).isEmpty();
        assertThat(AlloyCatalogue.packaged().require("ti-6al-4v").phases()).isEmpty();
    }

    /** The workstation reads copper 1.5 times too high; a piece of the alloy measured beside tells. All of it invented. */
    @Test
    void reference_spots_move_the_spots_along_the_line_too() {
        PhaseSpots biased = silverCopper().standardless().session("a").onReference();
        for (int i = 0; i < 5; i++) {
            biased.atomic("piece", readBiased(39.88 + 0.05 * i));
        }
        biased.onSpecimen();
        for (int i = 0; i < 6; i++) {
            biased.atomic("P" + i % 3, readBiased(13.1 + 0.05 * i));
        }
        GroupFinding group = biased.group();
        assertThat(group.reference().orElseThrow().used()).isTrue();
        PhaseReading reading = group.phaseReading().orElseThrow();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.ONE_PHASE);
        assertThat(line(reading).position().value()).isCloseTo(0, within(0.01));
        assertThat(line(reading).spots().highest()).isLessThan(0.02);
    }

    private static double readBiased(double copper) {
        return 100 * 1.5 * copper / (1.5 * copper + 100 - copper);
    }

    @Test
    void spots_of_three_sessions_are_read_together() {
        PhaseSpots spots = silverCopper();
        for (String session : List.of("a", "b", "c")) {
            spots.session(session).mass("P1", 8.2).mass("P1", 92.5).mass("P2", 8.4).mass("P2", 92.6);
        }
        GroupFinding group = spots.group();
        assertThat(group.sessions()).hasSize(3);
        SpotSpread spread = line(group.phaseReading().orElseThrow()).spots();
        assertThat(spread.spots()).isEqualTo(12);
        assertThat(spread.pattern()).isEqualTo(SpotSpread.Pattern.TWO_CLUSTERS);
        assertThat(group.phaseReading().orElseThrow().kind()).isEqualTo(PhaseReading.Kind.ONE_OR_THE_OTHER);
    }
}
