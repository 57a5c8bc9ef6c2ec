package surfeit.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static surfeit.report.OutcomeBuilder.depleted;
import static surfeit.report.OutcomeBuilder.enriched;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import surfeit.element.Element;
import surfeit.report.GroupBuilder;
import surfeit.report.Invented;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.Verdict;
import surfeit.xray.Material;
import surfeit.xray.ProfileCache;
import surfeit.xray.SignalDepthQuery;
import surfeit.xray.SignalDepths;

/** Prints how long a figure of usual size takes (wanted: under 5 ms); asserts that every drawing is the same. */
@Tag("bench")
class FigureSpeedTest {
    private static final int WARM_UP = 200;
    private static final int ROUNDS = 101;

    @Test
    void figures_of_usual_size_are_timed_and_always_the_same() {
        Map<String, Supplier<String>> figures = new LinkedHashMap<>();
        Interpretation answer = twelveGroups();
        figures.put("factors of 12 groups", () -> FactorFigure.of(answer, "Sample A7").svg());
        SpotPoints points = spots(200);
        figures.put("200 spots", () -> SpotFigure.of(points, List.of(), "Sample A7").svg());
        SpotPoints many = spots(5000);
        figures.put("5000 spots, thinned", () -> SpotFigure.of(many, List.of(), "Sample A7").svg());
        SignalDepths depths = SignalDepths.of(SignalDepthQuery.of(Material.byVolumes(Map.of(Element.of("Ag"), 0.719,
            Element.of("Cu"), 0.281)), List.of(5.0, 15.0)), new ProfileCache());
        figures.put("signal depths at 2 beam energies", () -> DepthFigure.of(depths, "Ag-Cu").svg());
        figures.forEach((name, figure) -> {
            String first = figure.get();
            double[] milliseconds = new double[ROUNDS];
            for (int i = -WARM_UP; i < ROUNDS; i++) {
                long start = System.nanoTime();
                String again = figure.get();
                milliseconds[Math.max(i, 0)] = (System.nanoTime() - start) / 1e6;
                assertThat(again).isEqualTo(first);
            }
            Arrays.sort(milliseconds);
            System.out.printf(Locale.ROOT, "figure: %s: median %.2f ms, %d kB%n", name, milliseconds[ROUNDS / 2],
                first.length() / 1024);
        });
    }

    private static Interpretation twelveGroups() {
        return Invented.answer(Invented.AG_CU, IntStream.range(0, 12).mapToObj(i ->
            new GroupBuilder("feature " + i, 12, "P1", "P2", "P3", "P4")
                .element("Ag", 0.601, depleted(0.2, 0.01).factor(0.3 + i * 0.05, 0.2, 0.4).p(0.01))
                .element("Cu", 0.399, enriched(0.8, 0.01).factor(2, 1.9, 2.1).p(0.01)).build())
                .toArray(GroupFinding[]::new));
    }

    private static SpotPoints spots(int number) {
        InventedReadings readings = new InventedReadings("Ag:60.1,Cu:39.9");
        List<String> features = new ArrayList<>(List.of("matrix", "dark patch", "rim"));
        for (int i = 0; i < number; i++) {
            double copper = 30 + i * 7 % 50;
            readings.add(features.get(i % 3), "P" + i % 7, "Cu " + copper + ", Ag " + (100 - copper),
                i % 5 == 0 ? Verdict.ENRICHED : Verdict.INCONCLUSIVE);
        }
        return readings.points();
    }
}
