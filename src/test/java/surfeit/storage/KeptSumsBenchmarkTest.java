package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.lab.Expectation;
import surfeit.lab.ImportOptions;
import surfeit.lab.Recount;
import surfeit.lab.StoredSample;
import surfeit.segregation.answer.GroupBy;
import surfeit.spot.Conditions;
import surfeit.spot.Judgement;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
import surfeit.spot.Spot;
import surfeit.spot.SpotCentre;

/**
 * {@code mvn -Pbench verify -Dtest=KeptSumsBenchmarkTest}: how long an answer takes for samples of 1000 to 1e6 spots on
 * four particles ({@code -Dsurfeit.bench.particles}), in turns; how long without kept sums, and to make them anew; and
 * what keeping them costs an import. Figures are printed; only what may not depend on the machine is asserted. Spots are
 * invented.
 */
@Tag("bench")
class KeptSumsBenchmarkTest {
    private static final int[] SIZES = {1_000, 100_000, Integer.getInteger("surfeit.bench.spots", 1_000_000)};
    private static final int PARTICLES = Integer.getInteger("surfeit.bench.particles", 4);
    private static final int ROUNDS = 41;

    @TempDir
    Path folder;

    private static void fill(LabBench bench, String name, int from, int count) {
        Random random = new Random(from + count);
        bench.laboratory().importSpots(name, LabBench.upload("as sent"), (upload, sample, sink) -> {
            sink.rejectedHeader("label;problem");
            for (int i = from; i < from + count; i++) {
                sink.spot(spot(i, random), LabBench.row(i + 2, ""));
            }
        }, ImportOptions.DEFAULT, LabBench.ANNA);
    }

    private static Spot spot(int number, Random random) {
        double copper = 0.39 + 0.01 * random.nextGaussian();
        Map<Element, ReportedValue> values = new LinkedHashMap<>();
        values.put(Element.of("Ag"), ReportedValue.Measured.of(0.985 - copper, "59.50"));
        values.put(Element.of("Cu"), ReportedValue.Measured.of(copper, "39.00"));
        values.put(Element.of("O"), ReportedValue.Measured.of(0.01, "1.00"));
        values.put(Element.of("C"), ReportedValue.Measured.of(0.005, "0.50"));
        return new Spot("S" + number, Optional.of("P" + number % PARTICLES), Optional.of(number % 8 < 4 ? "rim" : "core"),
            Optional.of("s1"), Optional.empty(), Conditions.UNKNOWN, Optional.empty(), Basis.ATOMIC, values);
    }

    private static double millis(Runnable work) {
        long start = System.nanoTime();
        work.run();
        return (System.nanoTime() - start) / 1e6;
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    @Test
    void an_answer_costs_the_same_at_any_number_of_spots() {
        try (LabBench bench = LabBench.in(folder)) {
            for (int size : SIZES) {
                bench.describe("N" + size);
                fill(bench, "N" + size, 0, size);
            }
            double[][] times = new double[SIZES.length][ROUNDS];
            for (int round = -20; round < ROUNDS; round++) {
                for (int i = 0; i < SIZES.length; i++) {
                    String name = "N" + SIZES[i];
                    double time = millis(() -> bench.laboratory().segregation(name, GroupBy.FEATURE));
                    times[i][Math.max(round, 0)] = time;
                }
            }
            for (int i = 0; i < SIZES.length; i++) {
                StoredSample sample = bench.laboratory().sample("N" + SIZES[i]);
                double renewed = millis(() -> new Recount(AlloyCatalogue.packaged(), 0.003).renew(bench.store(),
                    Optional.of(sample.name())));
                bench.store().write(access -> {
                    for (GroupBy by : GroupBy.values()) {
                        access.forgetSums(sample, by);
                    }
                    return sample;
                });
                double full = millis(() -> bench.laboratory().segregation(sample.name(), GroupBy.FEATURE));
                print("%d spots: answer %.3f ms from kept sums (%.2f of that for %d), %.1f ms from all spots; all three "
                    + "sums made anew in %.1f ms", SIZES[i], median(times[i]), median(times[i]) / median(times[0]), SIZES[0],
                    full, renewed);
                assertThat(sample.spotCount()).isEqualTo(SIZES[i]);
            }
        }
    }

    @Test
    void what_keeping_sums_costs_an_import() {
        Judgement plain = Judgement.DEFAULT;
        Sample agCu = LabBench.agCuSample();
        Sample median = new Sample(agCu.alloy(), agCu.nominal(), agCu.excludedElements(), agCu.accuracyClass(), agCu.form(),
            agCu.geometry(), agCu.coating(), agCu.mount(), new Judgement(plain.marginOddsRatio(), plain.alpha(),
            plain.uLevel(), plain.referenceCorrelation(), SpotCentre.MEDIAN), agCu.preparation(),
            agCu.diffractionPhases(), "", false);
        try (LabBench bench = LabBench.in(folder)) {
            for (int lot : new int[] {50_000, 200, 1}) {
                double[][] times = new double[2][7];
                int imports = Math.min(400, 50_000 / lot);
                for (int round = 0; round < 7; round++) {
                    for (int kept = 0; kept < 2; kept++) {
                        String name = lot + "-" + round + "-" + kept;
                        bench.laboratory().describe(name, kept == 1 ? agCu : median, Expectation.NONE, LabBench.ANNA);
                        times[kept][round] = millis(() -> {
                            for (int i = 0; i < imports; i++) {
                                fill(bench, name, i * lot, lot);
                            }
                        });
                    }
                }
                print("imports of %d spots: %.4f ms a spot without sums, %.4f with; ratio %.2f", lot,
                    median(times[0]) / imports / lot, median(times[1]) / imports / lot, median(times[1]) / median(times[0]));
                assertThat(bench.laboratory().sample(lot + "-0-1").spotCount()).isEqualTo((long) imports * lot);
            }
        }
    }

    private static void print(String format, Object... values) {
        System.out.println("bench: " + String.format(Locale.ROOT, format, values));
    }
}
