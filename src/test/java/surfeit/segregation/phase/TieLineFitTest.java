package surfeit.segregation.phase;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.composition.Basis;
import surfeit.composition.NominalText;
import surfeit.composition.Phase;
import surfeit.composition.SourceRead;
import surfeit.element.Element;
import surfeit.segregation.nominal.Comparison;
import surfeit.segregation.nominal.DecisionLevel;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.sums.PhaseField;
import surfeit.segregation.sums.Sums;
import surfeit.segregation.sums.TieLine;
import surfeit.segregation.uncertainty.AdditiveFloor;
import surfeit.segregation.uncertainty.GroupRuns;
import surfeit.segregation.uncertainty.GroupSums;
import surfeit.segregation.uncertainty.LinearForm;
import surfeit.segregation.uncertainty.RandomLadder;
import surfeit.segregation.uncertainty.SharedError;
import surfeit.statistics.RandomPart;

/** Position on a tie line and fit to a phase: against the single elements, and their coverage on invented data. */
class TieLineFitTest {
    private static final double STANDARDLESS = 0.125;
    private static final List<Element> THREE = List.of(Element.of("Sn"), Element.of("Ag"), Element.of("Cu"));
    private static final Comparison SOLDER = comparison("Sn:95.8,Ag:3.3,Cu:0.9");
    private static final Phase TIN = phase("Ag-Sn", "(beta-Sn)", "Sn:100", Phase.TERMINAL);
    private static final Phase SILVER_TIN = phase("Ag-Sn", "Ag3Sn", "Ag:75,Sn:25", "eutectic partner");

    private static Comparison comparison(String nominal) {
        return comparison(nominal, THREE);
    }

    private static Comparison comparison(String nominal, List<Element> elements) {
        return new Comparison(NominalText.parse(nominal, Basis.ATOMIC).resolve(), STANDARDLESS,
            AdditiveFloor.ofMass(0.001, elements.stream().mapToDouble(Element::atomicWeight).toArray()), Math.log(1.25),
            Optional.empty());
    }

    private static Phase phase(String system, String name, String composition, String role) {
        return Phase.of(system, name, NominalText.parse(composition, Basis.ATOMIC), OptionalDouble.empty(), role,
            OptionalDouble.empty(), "invented", SourceRead.NO);
    }

    private static TieLine line() {
        return TieLine.between(List.of(SILVER_TIN, TIN), THREE, SOLDER.nominal().middles()).get(0);
    }

    /** Three particles of three spots at a true composition, with a calibration error of their own. */
    private static GroupSums measured(double[] truth, Random random) {
        double[] sensitivity = new double[truth.length];
        for (int j = 0; j < truth.length; j++) {
            sensitivity[j] = Math.exp(STANDARDLESS * random.nextGaussian());
        }
        List<double[][]> particles = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            double[][] spots = new double[3][truth.length];
            for (double[] spot : spots) {
                for (int j = 0; j < truth.length; j++) {
                    spot[j] = truth[j] * sensitivity[j] * Math.exp(0.01 * random.nextGaussian());
                }
            }
            particles.add(spots);
        }
        return Sums.of(particles);
    }

    @Test
    void the_form_of_one_element_has_the_errors_of_that_element() {
        GroupSums sums = measured(new double[] {0.7, 0.2, 0.1}, new Random(3));
        double[] mean = sums.mean();
        SharedError shared = SOLDER.shared(mean);
        for (int i = 0; i < 3; i++) {
            double[] weights = new double[3];
            weights[i] = 1;
            LinearForm form = new LinearForm(weights);
            List<RandomPart> expected = RandomLadder.theseParticles(sums, i).parts();
            assertThat(form.parts(sums).get(0).standardError()).isCloseTo(expected.get(0).standardError(),
                within(1e-15));
            assertThat(form.parts(sums).get(0).degreesOfFreedom()).isEqualTo(6);
            assertThat(form.shared(mean, SOLDER.calibration().errors(mean)))
                .isCloseTo(shared.linear(i), within(1e-15));
        }
    }

    @Test
    void stated_uncertainties_of_spots_count_too() {
        GroupSums sums = measured(new double[] {0.7, 0.2, 0.1}, new Random(3));
        List<double[][]> stated = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            stated.add(new double[][] {{0.02, 0.02, 0.01}, {0.02, 0.02, 0.01}, {0.02, 0.02, 0.01}});
        }
        List<RandomPart> parts = new LinearForm(new double[] {1, 0, 0}).parts(Sums.withUncertainties(sums, stated));
        assertThat(parts).hasSize(2);
        double m = sums.mean()[0];
        // By hand: sqrt of ((1-m)^2 0.02^2 + m^2 (0.02^2 + 0.01^2)) over the root of nine spots.
        double expected = Math.sqrt((1 - m) * (1 - m) * 4e-4 + m * m * 5e-4) / 3;
        assertThat(parts.get(1).standardError()).isCloseTo(expected, within(1e-12));
        assertThat(parts.get(1).degreesOfFreedom()).isInfinite();
    }

    @Test
    void with_one_spot_a_particle_the_particles_scatter() {
        GroupSums sums = Sums.of(List.of(new double[][] {{7, 2, 1}}, new double[][] {{7.2, 1.8, 1}},
            new double[][] {{6.8, 2.2, 1}}));
        RandomPart part = new LinearForm(new double[] {1, 0, 0}).parts(sums).get(0);
        assertThat(part.standardError()).isCloseTo(0.02 / Math.sqrt(3), within(1e-12));
        assertThat(part.degreesOfFreedom()).isEqualTo(2);
    }

    @Test
    void the_interval_of_a_position_holds_the_true_one_in_about_95_of_100_groups() {
        double[] truth = {0.25 + 0.75 * 0.6, 0.75 * 0.4, 0};
        Random random = new Random(11);
        int held = 0;
        int onLine = 0;
        for (int run = 0; run < 2000; run++) {
            TieLineFit fit = TieLineFit.of(line(), Sums.runs(measured(truth, random)), SOLDER, new NominalTest[0]);
            held += fit.low() <= 0.6 && 0.6 <= fit.high() ? 1 : 0;
            onLine += fit.liesOn(0.05) ? 1 : 0;
        }
        assertThat(held / 2000.0).isBetween(0.935, 0.975);
        assertThat(onLine).isGreaterThanOrEqualTo(1900);
    }

    @Test
    void what_lies_beside_the_line_is_seen_to() {
        double[] beside = {0.6, 0.25, 0.15};
        TieLineFit fit = TieLineFit.of(line(), Sums.runs(measured(beside, new Random(5))), SOLDER, new NominalTest[0]);
        assertThat(fit.liesOn(1e-3)).isFalse();
    }

    @Test
    void the_phase_a_group_is_is_excluded_in_at_most_five_of_100_groups() {
        double[] truth = {0.25, 0.75, 0};
        Random random = new Random(12);
        int excluded = 0;
        PhaseField field = PhaseField.over(List.of(SILVER_TIN), THREE).get(0);
        for (int run = 0; run < 2000; run++) {
            GroupRuns runs = Sums.runs(measured(truth, random));
            NominalTest[] tests = SOLDER.theseParticles(runs);
            excluded += new PhaseFits(runs, SOLDER, tests).pValue(field) <= 0.05 ? 1 : 0;
        }
        assertThat(excluded).isBetween(10, 110);
    }

    /** With two elements, what one gains the other loses: one question, so nothing is added for asking twice. */
    @Test
    void in_a_binary_the_p_of_a_phase_is_that_of_either_element_alone() {
        List<Element> pair = List.of(Element.of("Sn"), Element.of("Ag"));
        Comparison comparison = comparison("Sn:96.5,Ag:3.5", pair);
        GroupRuns runs = Sums.runs(Sums.of(List.<double[][]>of(new double[][] {{60, 40}, {61, 39}, {59, 41}})));
        NominalTest[] tests = comparison.theseParticles(runs);
        PhaseField field = PhaseField.over(List.of(phase("Ag-Sn", "half", "Sn:50,Ag:50", "compound")), pair).get(0);
        SharedError shared = comparison.shared(runs.mean());
        double alone = NominalTest.pValue(runs.mean()[0], tests[0].parts(), shared, 0,
            new NominalTest.Limits(0.5, 0.5, 0.005 / Math.sqrt(3)), DecisionLevel.EVERY_VALUE);
        assertThat(alone).isBetween(0.01, 0.2);
        assertThat(new PhaseFits(runs, comparison, tests).pValue(field)).isCloseTo(alone, within(1e-9));
    }

    /**
     * Four elements, invented: the middle of the line is 50, 30, 12.5, 7.5. A calibration error of 12.5 % in each leaves
     * bismuth 1 at% above it, and does not leave it 7 at% above, whatever place it has in the list.
     */
    @ParameterizedTest
    @CsvSource({"0, true", "1, true", "7, false"})
    void with_four_elements_one_that_lies_beside_the_line_is_seen_wherever_it_is_listed(double more, boolean lies) {
        double[] spot = {50 * (1 - more / 92.5), 30 * (1 - more / 92.5), 12.5 * (1 - more / 92.5), 7.5 + more};
        for (List<String> order : List.of(List.of("Sn", "Ag", "Cu", "Bi"), List.of("Bi", "Sn", "Ag", "Cu"),
            List.of("Ag", "Bi", "Cu", "Sn"))) {
            List<Element> four = order.stream().map(Element::of).toList();
            double[] own = order.stream().mapToDouble(symbol -> spot[List.of("Sn", "Ag", "Cu", "Bi").indexOf(symbol)])
                .toArray();
            Comparison comparison = comparison(order.stream().map(symbol -> symbol + ":25")
                .collect(Collectors.joining(",")), four);
            TieLine line = TieLine.between(List.of(phase("Ag-Bi-Cu-Sn", "soft", "Sn:80,Ag:10,Cu:5,Bi:5", "compound"),
                phase("Ag-Bi-Cu-Sn", "hard", "Sn:20,Ag:50,Cu:20,Bi:10", "compound")), four,
                comparison.nominal().middles()).get(0);
            TieLineFit fit = TieLineFit.of(line, Sums.runs(Sums.of(List.<double[][]>of(new double[][] {own, own, own}))), comparison,
                new NominalTest[0]);
            assertThat(fit.liesOn(0.05)).as("order %s", order).isEqualTo(lies);
        }
    }
}
