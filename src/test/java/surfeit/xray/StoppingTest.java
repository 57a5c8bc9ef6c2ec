package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.element.Element;

class StoppingTest {

    // Bethe's stopping power 78500 Z/(A E) ln(1.166 E/J) keV cm²/g with the same J; relative differences worked out
    // separately.
    @ParameterizedTest
    @CsvSource({"Si,5,-8.8", "Si,10,-3.3", "Si,20,2.2", "Cu,5,-11.6", "Cu,10,-6.7", "Cu,20,-1.8", "Au,5,-7.9",
        "Au,10,-7.1", "Au,20,-4.4"})
    void energy_loss_lies_near_bethe_and_below_it_at_low_energy(String symbol, double energy, double percent) {
        Element element = Element.of(symbol);
        Stopping stopping = Stopping.of(Samples.pure(symbol));
        double bethe = 78500 * element.atomicNumber() / (element.atomicWeight() * energy)
            * Math.log(1.166 * energy / stopping.meanIonisationKev());
        assertThat(100 * (stopping.lossPerMassPath(energy) / bethe - 1)).isCloseTo(percent, within(0.15));
    }

    @Test
    void mean_ionisation_of_a_mixture_lies_between_its_elements() {
        assertThat(Stopping.of(Samples.silverCopper()).meanIonisationKev())
            .isBetween(Stopping.elementIonisationKev(29), Stopping.elementIonisationKev(47));
    }

    @Test
    void ionisations_are_the_integral_of_cross_section_over_loss() {
        Line line = Samples.line("Si", "Ka");
        double edge = line.edgeEnergyKev();
        Stopping stopping = Stopping.of(Samples.pure("Si"));
        double m = Family.K.crossSectionExponent(14);
        double sum = 0;
        int steps = 20000;
        for (int i = 0; i < steps; i++) {
            double energy = edge + (15 - edge) * (i + 0.5) / steps;
            double u = energy / edge;
            sum += Math.log(u) / (Math.pow(u, m) * edge * edge) / stopping.lossPerMassPath(energy) * (15 - edge)
                / steps;
        }
        assertThat(stopping.inverse(15, 15 / edge, m)).isCloseTo(sum, within(1e-6 * sum));
    }
}
