package surfeit.segregation.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import surfeit.segregation.InventedSpots;
import surfeit.segregation.answer.ElementFinding;

/** Verdicts that hang on one particle, against answers about the same spots without it; invented spots. */
class FragileVerdictsTest {
    private static final int PARTICLES = 60;

    /** Sixty particles with a shift near what they show, so that verdicts turn with the one or other of them. */
    @Test
    void in_a_large_group_the_particles_named_are_those_without_which_the_verdict_is_another() {
        int fragile = 0;
        for (int seed = 0; seed < 30; seed++) {
            List<String> spots = spots(new Random(seed));
            ElementFinding finding = silver(spots, -1);
            List<String> without = new ArrayList<>();
            for (int particle = 0; particle < PARTICLES; particle++) {
                if (silver(spots, particle).outcome().verdict() != finding.outcome().verdict()) {
                    without.add("P" + particle);
                }
            }
            assertThat(finding.fragileWithout().isEmpty()).as("seed %s", seed).isEqualTo(without.isEmpty());
            assertThat(without).containsAll(finding.fragileWithout());
            fragile += without.isEmpty() ? 0 : 1;
        }
        assertThat(fragile).isBetween(3, 27);
    }

    private static List<String> spots(Random random) {
        List<String> spots = new ArrayList<>();
        for (int i = 0; i < PARTICLES; i++) {
            double silver = 68.7 + 22 * random.nextGaussian() / Math.sqrt(3);
            spots.add(String.format(Locale.ROOT, "Ag %.3f, Cu %.3f", silver, 100 - silver));
        }
        return spots;
    }

    private static ElementFinding silver(List<String> spots, int without) {
        InventedSpots invented = new InventedSpots();
        for (int i = 0; i < spots.size(); i++) {
            if (i != without) {
                invented.add("matrix", "P" + i, spots.get(i));
            }
        }
        return invented.against("Ag:60,Cu:40").groups().get(0).elements().get(0);
    }
}
