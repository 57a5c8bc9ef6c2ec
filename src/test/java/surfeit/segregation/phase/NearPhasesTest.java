package surfeit.segregation.phase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.composition.Basis;
import surfeit.composition.NominalText;
import surfeit.composition.Phase;
import surfeit.composition.SourceRead;
import surfeit.segregation.PhaseSpots;
import surfeit.segregation.answer.PhaseReading;

/** Which of several phases and lines a group is read against, and what is said of it; the spots are invented. */
class NearPhasesTest {

    private static PhaseSpots silverCopper() {
        return PhaseSpots.on("ag-cu-eutectic");
    }

    private static PhaseReading.OnTieLine line(PhaseReading reading) {
        return reading.tieLine().orElseThrow();
    }

    private static Phase own(String name, String composition) {
        return phase("Ag-Cu", name, composition);
    }

    private static Phase ofThree(String name, String composition) {
        return phase("Ag-Cu-Sn", name, composition);
    }

    private static Phase phase(String system, String name, String composition) {
        return Phase.of(system, name, NominalText.parse(composition, Basis.ATOMIC), OptionalDouble.empty(), "compound",
            OptionalDouble.empty(), "invented", SourceRead.NO);
    }

    /** Invented: two compounds 2 at% apart, and spots between them that a calibration error of 2.5 % cannot part. */
    @Test
    void spots_that_two_phases_cover_are_told_as_either() {
        List<Phase> own = List.of(own("first", "Ag:60,Cu:40"), own("second", "Ag:58,Cu:42"), own("third", "Ag:10,Cu:90"));
        PhaseReading reading = silverCopper().phases(own).atomic("P1", 40.9).atomic("P1", 41.1).atomic("P2", 41)
            .atomic("P2", 41).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.CANNOT_TELL);
        assertThat(reading.detail()).isEqualTo("May be first or second; the uncertainty covers all of these.");
    }

    /** The same spots as a binary whose lines come in either order: the shorter line joins the neighbours. */
    @Test
    void the_neighbours_make_the_mixture_in_whatever_order_the_phases_are_listed() {
        List<Phase> own = List.of(own("middle", "Ag:50,Cu:50"), own("(Cu)", "Ag:0,Cu:100"), own("(Ag)", "Ag:100,Cu:0"));
        PhaseReading reading = silverCopper().phases(own).atomic("P1", 70).atomic("P1", 70.2).atomic("P2", 69.9)
            .atomic("P2", 70.1).reading();
        assertThat(List.of(line(reading).from().name(), line(reading).to().name()))
            .containsExactlyInAnyOrder("middle", "(Cu)");
    }

    @ParameterizedTest
    @CsvSource({"8.2, (Ag), (Cu)", "92.5, (Cu), (Ag)"})
    void the_least_share_of_the_phase_a_group_is_leaves_the_other_the_rest(double copper, String fitting, String other) {
        PhaseReading reading = silverCopper().mass("P1", copper - 0.1).mass("P1", copper + 0.1).mass("P2", copper)
            .mass("P2", copper).reading();
        assertThat(reading.kind()).isEqualTo(PhaseReading.Kind.ONE_PHASE);
        double least = fitting.equals("(Cu)") ? line(reading).shareOfAtoms().low()
            : 1 - line(reading).shareOfAtoms().high();
        assertThat(least).isBetween(0.9, 0.999);
        assertThat(reading.detail()).startsWith("Fits " + fitting + " and no other known phase. At least "
            + BigDecimal.valueOf(100 * least).setScale(1, RoundingMode.FLOOR) + " % of its atoms are that phase; the rest may be "
            + other + ".");
    }

    @Test
    void one_spot_far_from_every_phase_is_said_to_fit_none_but_for_its_scatter() {
        assertThat(silverCopper().mass("P1", 50).reading().detail()).isEqualTo("Nothing tells the scatter, so no phase "
            + "can be excluded; repeat the spot or give its uncertainty. The calibration error alone would fit none of "
            + "(Ag), (Cu).");
    }

    /** Invented: of three phases the two around the spot are nearest, though its line is the last listed. */
    @Test
    void one_spot_is_placed_on_the_nearest_line() {
        List<Phase> own = List.of(own("first", "Ag:90,Cu:10"), own("second", "Ag:70,Cu:30"), own("third", "Ag:20,Cu:80"));
        PhaseReading reading = silverCopper().phases(own).atomic("P1", 55).reading();
        assertThat(line(reading).from().name()).isEqualTo("second");
        assertThat(line(reading).to().name()).isEqualTo("third");
        assertThat(line(reading).position().value()).isCloseTo(0.5, within(1e-9));
    }

    /**
     * Invented: silver scatters so much that it excludes nothing, tin does not. The element that lies furthest off by the
     * calibration error alone is not the one that tells.
     */
    @Test
    void a_phase_is_excluded_by_the_element_that_tells_though_another_lies_further_off() {
        PhaseReading reading = PhaseSpots.on("sac305").phases(List.of(ofThree("soft", "Sn:70,Ag:20,Cu:10"),
            ofThree("hard", "Sn:10,Ag:60,Cu:30")))
            .spot("patch", "P1", OptionalDouble.empty(), Basis.ATOMIC, 60, 39, 1)
            .spot("patch", "P1", OptionalDouble.empty(), Basis.ATOMIC, 60.2, 14.8, 25)
            .spot("patch", "P1", OptionalDouble.empty(), Basis.ATOMIC, 59.8, 38.2, 2).reading();
        assertThat(reading.phases()).noneMatch(PhaseReading.Fit::fits);
    }

    /** Of three elements too: what the reference spots leave open of the correction is left open of the position. */
    @Test
    void the_scatter_of_reference_spots_widens_a_position_among_three_elements() {
        double tight = width(0.02);
        double wide = width(0.4);
        assertThat(tight).isPositive();
        assertThat(wide).isBetween(1.1 * tight, 10 * tight);
    }

    /** Width of the interval of spots between Ag3Sn and tin, beside reference spots whose silver scatters so, in wt%. */
    private static double width(double scatter) {
        PhaseSpots spots = PhaseSpots.on("sac305").standardless().session("a").onReference();
        for (double off : new double[] {-1, 1, -0.5, 0.5, 0}) {
            spots.spot("piece", "piece", OptionalDouble.empty(), Basis.MASS, 96.5 - scatter * off, 3 + scatter * off, 0.5);
        }
        spots.onSpecimen();
        for (String particle : List.of("P1", "P2", "P3")) {
            for (double off : new double[] {-0.2, 0.2}) {
                spots.spot("patch", particle, OptionalDouble.empty(), Basis.ATOMIC, 83 + off, 16.9 - off, 0.1);
            }
        }
        assertThat(spots.group().reference().orElseThrow().used()).isTrue();
        PhaseReading.OnTieLine line = line(spots.reading());
        assertThat(line.to().name()).isEqualTo("(beta-Sn)");
        return line.position().high() - line.position().low();
    }
}
