package surfeit.report.figure;

import java.util.ArrayList;
import java.util.List;

/**
 * The part of a composition triangle that is shown: three least fractions and the side that is left.
 *
 * <p>Fractions a, b, c of one composition add up to one. The part is itself a triangle, the same way up: a from
 * {@code least[0]} to {@code least[0] + side} and likewise; a point lies at the weights {@code (a - least[0]) / side}
 * of the corners.
 *
 * @param least lowest fraction of each element in the picture
 * @param side  span of each element in the picture; one for the whole triangle
 * @param steps grid lines to a side
 */
record TriangleFrame(double[] least, double side, int steps) {
    /** Grid steps per whole triangle, and of these how many the side of the part has. Coarsest last. */
    private static final int[][] PARTS = {{100, 5}, {50, 5}, {20, 5}, {10, 5}, {5, 5}};
    private static final double PAD = 0.06;
    private static final double ROUNDING = 1e-9;

    /** The smallest part with round sides that holds these compositions. */
    static TriangleFrame around(List<double[]> compositions) {
        double[] lowest = {1, 1, 1};
        for (double[] composition : compositions) {
            for (int i = 0; i < lowest.length; i++) {
                lowest[i] = Math.min(lowest[i], composition[i]);
            }
        }
        double span = Math.max(0, 1 - lowest[0] - lowest[1] - lowest[2]);
        for (int[] part : PARTS) {
            int[] units = new int[lowest.length];
            int left = part[1] - part[0];
            for (int i = 0; i < units.length; i++) {
                units[i] = (int) Math.max(0, Math.floor((lowest[i] - span * PAD) * part[0] + ROUNDING));
                left += units[i];
            }
            if (left >= 0) {
                return new TriangleFrame(spread(units, left, lowest, part[0]), (double) part[1] / part[0], part[1]);
            }
        }
        return new TriangleFrame(new double[lowest.length], 1, PARTS[PARTS.length - 1][1]);
    }

    /** Room that is left goes, step by step, to where data lie nearest to the edge. */
    private static double[] spread(int[] units, int left, double[] lowest, int parts) {
        for (int step = 0; step < left; step++) {
            int nearest = -1;
            for (int i = 0; i < units.length; i++) {
                if (units[i] > 0 && (nearest < 0
                    || lowest[i] * parts - units[i] < lowest[nearest] * parts - units[nearest])) {
                    nearest = i;
                }
            }
            units[nearest]--;
        }
        double[] least = new double[units.length];
        for (int i = 0; i < units.length; i++) {
            least[i] = (double) units[i] / parts;
        }
        return least;
    }

    boolean isWhole() {
        return side == 1;
    }

    boolean holds(double[] composition) {
        for (int i = 0; i < least.length; i++) {
            if (composition[i] < least[i] - ROUNDING) {
                return false;
            }
        }
        return true;
    }

    /** Weight of the corner of an element. */
    double weight(double[] composition, int element) {
        return (composition[element] - least[element]) / side;
    }

    /** The fractions of an element at which grid lines run, both ends included. */
    List<Double> grid(int element) {
        List<Double> lines = new ArrayList<>();
        for (int i = 0; i <= steps; i++) {
            lines.add(least[element] + side * i / steps);
        }
        return lines;
    }
}
