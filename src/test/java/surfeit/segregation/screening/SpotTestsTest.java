package surfeit.segregation.screening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleConsumer;
import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.element.Element;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Conditions;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/** Single spots of four elements in mass percent with their uncertainties. Invented numbers. */
class SpotTestsTest {
    private static final String[] SYMBOLS = {"Ag", "Cu", "Zn", "Sn"};
    private static final double[] MASS = {0.64, 0.15, 0.12, 0.09};
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    private double sum;

    private static Spot spot(String particle) {
        Map<Element, ReportedValue> values = new LinkedHashMap<>();
        for (int i = 0; i < SYMBOLS.length; i++) {
            values.put(Element.of(SYMBOLS[i]), new ReportedValue.Measured(MASS[i], "12.34", OptionalDouble.of(0.02 * MASS[i]),
                Optional.empty(), OptionalDouble.empty(), Optional.empty()));
        }
        return new Spot("1", Optional.of(particle), Optional.of("matrix"), Optional.empty(), Optional.empty(), Conditions.UNKNOWN,
            Optional.empty(), Basis.MASS, values);
    }

    private static ScreenedSpots reader() {
        Nominal nominal = NominalText.parse("Ag:56,Cu:22,Zn:17,Sn:5", Basis.ATOMIC);
        return new SpotScreening(Sample.of(Optional.empty(), Optional.of(nominal)), nominal,
            SpotSource.of(List.of(spot("P1"), spot("P2"))), 0.003).spots();
    }

    /** Expected: the same arithmetic by the library uncertainties 3.1.6 and math.erfc of Python, src/test/resources/bench/screen.py. */
    @Test
    void p_values_of_one_spot_are_those_of_an_uncertainty_library() {
        List<Double> found = new ArrayList<>();
        reader().pValues(spot("P1"), found::add);
        double[] expected = {0.6835871069206421, 0.9054463397876557, 0.9484121331718114, 0.02036377437959888};
        assertThat(found).hasSize(expected.length);
        for (int i = 0; i < expected.length; i++) {
            assertThat(found.get(i)).isCloseTo(expected[i], within(1e-12));
        }
    }

    /** The least of several rounds: what the compiler or a first call adds is not the arithmetic's. */
    @Test
    void testing_a_spot_allocates_nothing() {
        ScreenedSpots reader = reader();
        Spot spot = spot("P1");
        DoubleConsumer add = p -> sum += p;
        long least = Long.MAX_VALUE;
        for (int round = 0; round < 20 && least > 0; round++) {
            long before = THREADS.getCurrentThreadAllocatedBytes();
            for (int i = 0; i < 5_000; i++) {
                reader.pValues(spot, add);
            }
            least = Math.min(least, THREADS.getCurrentThreadAllocatedBytes() - before);
        }
        assertThat(sum).isPositive();
        assertThat(least).isZero();
    }
}
