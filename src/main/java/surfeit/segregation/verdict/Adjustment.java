package surfeit.segregation.verdict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import surfeit.segregation.nominal.BelowLimit;
import surfeit.segregation.nominal.NominalTest;
import surfeit.statistics.ManyTests;

/**
 * Holm's adjustment over every group and element of one answer.
 *
 * <p>A group of two elements is one test, with the larger of its two p values, which both elements then carry. Tests
 * without a random part do not enter, unless the other one of two elements lies below its limit everywhere. Source: Holm,
 * Scand. J. Statist. 6 (1979) 65, from memory.
 */
final class Adjustment {
    private Adjustment() {
    }

    /** Adjusted p values per group and element; NaN where the test did not enter. */
    static double[][] holm(List<NominalTest[]> groups) {
        List<Double> family = new ArrayList<>();
        List<int[]> owners = new ArrayList<>();
        double[][] adjusted = new double[groups.size()][];
        for (int g = 0; g < groups.size(); g++) {
            NominalTest[] tests = groups.get(g);
            adjusted[g] = new double[tests.length];
            Arrays.fill(adjusted[g], Double.NaN);
            if (tests.length == 2) {
                if (countsAsOne(tests[0], tests[1])) {
                    family.add(Math.max(tests[0].p(), tests[1].p()));
                    owners.add(new int[] {g, -1});
                }
                continue;
            }
            for (int i = 0; i < tests.length; i++) {
                if (counts(tests[i])) {
                    family.add(tests[i].p());
                    owners.add(new int[] {g, i});
                }
            }
        }
        double[] values = ManyTests.holm(family.stream().mapToDouble(Double::doubleValue).toArray());
        for (int f = 0; f < values.length; f++) {
            int[] owner = owners.get(f);
            if (owner[1] < 0) {
                adjusted[owner[0]][0] = values[f];
                adjusted[owner[0]][1] = values[f];
            } else {
                adjusted[owner[0]][owner[1]] = values[f];
            }
        }
        return adjusted;
    }

    /** Both have a random part, or one lies below its limit everywhere, which needs none. */
    private static boolean countsAsOne(NominalTest a, NominalTest b) {
        boolean either = counts(a) && b.parts().isEmpty() && a.scale().equals(BelowLimit.SCALE)
            || counts(b) && a.parts().isEmpty() && b.scale().equals(BelowLimit.SCALE);
        return counts(a) && counts(b) || either && !Double.isNaN(a.p()) && !Double.isNaN(b.p());
    }

    private static boolean counts(NominalTest test) {
        return !test.parts().isEmpty() && !Double.isNaN(test.p());
    }
}
