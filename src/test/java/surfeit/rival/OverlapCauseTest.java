package surfeit.rival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import surfeit.element.Element;
import surfeit.segregation.InventedSpots;

/** What a peak of an element found beside the alloy could add to a line. Spots are invented. */
class OverlapCauseTest {

    /**
     * Sulphur Ka lies on lead Ma. 20 at% S beside 80 of the alloy are 0.25 atoms per atom of it: by mass 0.25 x 32.06 over
     * 0.261 x 207.2 of lead, 0.1482 of it. The counts it adds per count of lead are that times those at equal masses.
     */
    @Test
    void an_element_found_beside_adds_as_much_as_was_found() {
        InventedSpots spots = new InventedSpots();
        for (String particle : List.of("P1", "P2", "P3")) {
            spots.add("patch", particle, "Sn 52.1, Pb 27.9, S 20").add("patch", particle, "Sn 51.9, Pb 28.1, S 20");
        }
        Rival overlap = spots.against("Sn:73.9,Pb:26.1").groups().get(0).rivals().stream()
            .filter(rival -> rival.code() == Cause.LINE_OVERLAP).findFirst().orElseThrow();
        GroupPhysics physics = Nominals.physics("Sn:73.9,Pb:26.1", 15);
        double equalMasses = physics.disturbance(physics.elements().indexOf(Element.of("Pb")), Element.of("S")).orElseThrow().share();
        assertThat(equalMasses).isPositive();
        double odds = 26.1 / 73.9 * (1 + 0.1482 * equalMasses);
        assertThat(overlap.cause()).startsWith("line overlap: S Ka on Pb Ma");
        assertThat(overlap.largestFactor().orElseThrow()).isCloseTo(odds / (1 + odds) / 0.261, within(0.002));
        assertThat(overlap.assumes()).startsWith("Both elements are in the spectrum's list");
    }

    /**
     * Molybdenum La1 (2293.16 eV) and sulphur Ka1 (2307.84 eV; Bearden 1967, from memory) are 14.7 eV apart at a width of
     * 89 eV (130 eV at Mn Ka, 2.5 eV^2 per eV), and overlap by 4^(-0.165^2), 0.963. Of sulphur 0.037 may be left, and
     * molybdenum then have odds of 0.5 / 0.037, 93.1 %: 2.79 times nominal.
     */
    @Test
    void of_two_lines_that_hide_each_other_the_fit_may_give_one_away() {
        InventedSpots spots = new InventedSpots();
        for (String particle : List.of("P1", "P2", "P3")) {
            spots.add("flake", particle, "Mo 52.1, S 47.9").add("flake", particle, "Mo 51.9, S 48.1");
        }
        Rival overlap = spots.against("Mo:33.333,S:66.667").groups().get(0).rivals().stream()
            .filter(rival -> rival.code() == Cause.LINE_OVERLAP).findFirst().orElseThrow();
        assertThat(overlap.assumes()).startsWith("The fit gives counts of one line to the other");
        assertThat(overlap.couldExplain()).isEqualTo(Rival.CouldExplain.YES);
        assertThat(overlap.element()).contains(Element.of("Mo"));
        assertThat(overlap.largestFactor().orElseThrow()).isCloseTo(2.79, within(0.02));
    }
}
