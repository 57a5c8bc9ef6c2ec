package surfeit.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.function.DoubleConsumer;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.infra.Blackhole;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.element.Element;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.blocks.SpotSource;
import surfeit.segregation.screening.ScreenedSpots;
import surfeit.segregation.screening.SpotScreening;
import surfeit.spot.Conditions;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/**
 * Spots of four elements in mass percent, each with its uncertainty, on four particles, interpreted and screened. Two
 * numbers of spots tell what one more costs. Invented numbers.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
public class SpotKernel {
    static final int FEW = 10_000;
    /** A block of sums more, so that what its border costs counts as often as it comes. */
    static final int MANY = 26_384;
    private static final String[] SYMBOLS = {"Ag", "Cu", "Zn", "Sn"};
    private static final double[] MASS = {0.64, 0.15, 0.12, 0.09};
    private static final double DEFAULT_LIMIT = 0.003;

    /** How many spots; the two constants above. */
    @Param({"10000", "26384"})
    public int spotCount;

    private final List<Spot> spots = new ArrayList<>();
    private Sample sample;
    private Nominal nominal;
    private ScreenedSpots reader;
    private double sum;

    /** Makes the spots. */
    @Setup
    public void makeSpots() {
        Random random = new Random(20261124);
        for (int i = 0; i < spotCount; i++) {
            Map<Element, ReportedValue> values = new LinkedHashMap<>();
            for (int e = 0; e < SYMBOLS.length; e++) {
                double value = MASS[e] * (1 + 0.02 * random.nextGaussian());
                values.put(Element.of(SYMBOLS[e]), new ReportedValue.Measured(value, String.format(Locale.ROOT, "%.2f",
                    100 * value), OptionalDouble.of(0.02 * value), Optional.empty(), OptionalDouble.empty(), Optional.empty()));
            }
            spots.add(new Spot("s" + i, Optional.of("P" + i % 4), Optional.of("matrix"), Optional.of("a"), Optional.empty(),
                Conditions.UNKNOWN, Optional.empty(), Basis.MASS, values));
        }
        nominal = NominalText.parse("Ag:56,Cu:22,Zn:17,Sn:5", Basis.ATOMIC);
        sample = Sample.of(Optional.empty(), Optional.of(nominal));
        reader = new SpotScreening(sample, nominal, SpotSource.of(spots), DEFAULT_LIMIT).spots();
    }

    /** One answer about all of them. */
    @Benchmark
    public Interpretation interpret() {
        return new Interpreter().interpret(sample, nominal, SpotSource.of(spots), GroupBy.FEATURE, DEFAULT_LIMIT);
    }

    /** From the numbers of each to the p values of its elements, as the pass over a screening's family does it. */
    @Benchmark
    public double test() {
        sum = 0;
        DoubleConsumer add = p -> sum += p;
        for (Spot spot : spots) {
            reader.pValues(spot, add);
        }
        return sum;
    }

    /** The whole screening: groups, p values, their adjustment, and a reading of every spot. */
    @Benchmark
    public void screen(Blackhole hole) {
        SpotSource source = SpotSource.of(spots);
        new SpotScreening(sample, nominal, source, DEFAULT_LIMIT).forEach(source, hole::consume);
    }
}
