package surfeit.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Optional;
import org.apache.commons.math3.special.Beta;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import surfeit.statistics.StudentT;

/**
 * What a spot costs, from its numbers to the p values of its elements, beside the same arithmetic in Python where Python
 * is at hand; and how exact p values are.
 */
@Tag("bench")
class KernelBenchmarkTest {
    /** Short ones, so that some fall between what else the machine does. The script takes as many, as short. */
    private static final int ROUNDS = 200;
    private static final TimeValue ROUND = TimeValue.milliseconds(10);
    private static final String SCRIPT = Path.of("src/test/resources/bench/screen.py").toString();

    @Test
    void one_more_spot_beside_the_same_in_python() throws Exception {
        Collection<RunResult> results = new Runner(new OptionsBuilder().include(SpotKernel.class.getName()).forks(1)
            .warmupIterations(6).warmupTime(TimeValue.seconds(2)).measurementIterations(ROUNDS).measurementTime(ROUND)
            .addProfiler(GCProfiler.class).jvmArgsAppend("-Xmx1g").build()).run();
        double tested = best(results, "test");
        double bytes = perSpot(results, "interpret", "gc.alloc.rate.norm");
        System.out.printf("bench: a spot of four elements: tested in %.0f ns, %.0f bytes; interpreted in %.0f ns, %.0f bytes; "
            + "screened (two passes, readings) in %.0f ns, %.0f bytes%n", tested, perSpot(results, "test", "gc.alloc.rate.norm"),
            best(results, "interpret"), bytes, best(results, "screen"), perSpot(results, "screen", "gc.alloc.rate.norm"));
        Goal.KERNEL_BYTES.measured("", InTurns.digits(bytes) + " bytes", "", bytes < 1);
        beside(Goal.KERNEL_NUMPY, "numpy", tested, 3);
        beside(Goal.KERNEL_PYTHON, "uncertainties", tested, 500);
        assertThat(tested).isPositive();
    }

    /** Nanoseconds a spot in the best of the rounds: other work on the machine only ever adds. The script does the same. */
    private static double best(Collection<RunResult> results, String benchmark) {
        return result(results, benchmark, SpotKernel.FEW).getPrimaryResult().getStatistics().getMin() / SpotKernel.FEW;
    }

    private static void beside(Goal goal, String library, double ours, double wanted) throws Exception {
        Optional<Double> theirs = python(library);
        if (theirs.isEmpty()) {
            goal.notRun("no python3 with " + library + " here");
            return;
        }
        double ratio = theirs.get() / ours;
        goal.measured(InTurns.digits(theirs.get()) + " ns", InTurns.digits(ours) + " ns", InTurns.digits(ratio),
            ratio >= wanted);
    }

    /** Nanoseconds a spot with this library; empty where it is not there. */
    private static Optional<Double> python(String library) throws IOException, InterruptedException {
        Process process;
        try {
            process = new ProcessBuilder("python3", SCRIPT, library).redirectError(ProcessBuilder.Redirect.DISCARD).start();
        } catch (IOException e) {
            return Optional.empty();
        }
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.US_ASCII).strip();
        return process.waitFor() == 0 ? Optional.of(Double.parseDouble(said)) : Optional.empty();
    }

    /** The difference two numbers of spots make, over the difference of the numbers. */
    private static double perSpot(Collection<RunResult> results, String benchmark, String secondary) {
        return (score(results, benchmark, secondary, SpotKernel.MANY) - score(results, benchmark, secondary, SpotKernel.FEW))
            / (SpotKernel.MANY - SpotKernel.FEW);
    }

    private static double score(Collection<RunResult> results, String benchmark, String secondary, int spots) {
        RunResult result = result(results, benchmark, spots);
        String key = result.getSecondaryResults().keySet().stream().filter(each -> each.endsWith(secondary)).findFirst()
            .orElseThrow();
        return result.getSecondaryResults().get(key).getScore();
    }

    private static RunResult result(Collection<RunResult> results, String benchmark, int spots) {
        return results.stream().filter(each -> each.getParams().getBenchmark().endsWith("." + benchmark)
            && each.getParams().getParam("spotCount").equals(Integer.toString(spots))).findFirst().orElseThrow();
    }

    @Test
    void p_values_beside_commons_math() {
        double largest = 0;
        for (double df = 1; df <= 1000; df *= 1.3) {
            for (double t = 0.01; t < 60; t *= 1.05) {
                double theirs = Beta.regularizedBeta(df / (df + t * t), df / 2, 0.5);
                largest = Math.max(largest, Math.abs(StudentT.twoSidedP(t, df) - theirs));
            }
        }
        Goal.P_VALUES.measured("", InTurns.digits(largest), "", largest <= 1e-10);
        assertThat(largest).isFinite();
    }
}
