package surfeit.calibration;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.calibration.Label.Promise;
import surfeit.composition.Basis;
import surfeit.spot.AccuracyClass;

/**
 * Particles against nominal: one to ten particles with every kind of scatter and of calibration error.
 *
 * <p>Spots (1 to 6), elements (2 to 6), decimals (2 to 4), at% or mass%, quiet or loud particles (5 or 12 % relative)
 * change from cell to cell, so that each meets each without crossing all of them.
 */
final class GridCells {
    static final String BLOCK = "against nominal";
    static final String THESE = "these two particles";
    private static final int MOST_PARTICLES = 10;
    private static final int MOST_SPOTS = 6;
    private static final double QUIET = 0.05;
    private static final double LOUD = 0.12;
    static final double WITHIN = 0.04;
    static final double SHIFT = Math.log(1.5);

    /** What the calibration error of a cell is. */
    private enum Error {
        NONE("no calibration error", Calibration.cancelled()),
        STANDARDS("standards-based", Calibration.of(AccuracyClass.STANDARDS_BASED)),
        STANDARDLESS("standardless", Calibration.of(AccuracyClass.STANDARDLESS));

        private final String words;
        private final Calibration calibration;

        Error(String words, Calibration calibration) {
            this.words = words;
            this.calibration = calibration;
        }
    }

    private GridCells() {
    }

    static List<Cell> all() {
        List<Cell> cells = new ArrayList<>();
        List<Cell> these = new ArrayList<>();
        for (Scatter scatter : Scatter.values()) {
            for (Error error : Error.values()) {
                for (int k = 1; k <= MOST_PARTICLES; k++) {
                    int n = 1 + (2 * k + scatter.ordinal() + 3 * error.ordinal() + k / 3) % MOST_SPOTS;
                    int elements = 2 + (k + 2 * scatter.ordinal() + error.ordinal()) % 5;
                    Promise promise = !scatter.isSymmetric() ? Promise.OUTSIDE : k < 3 ? Promise.FEW : Promise.FULL;
                    cells.add(cell(BLOCK, scatter, error, k, n, elements, promise, truths(error)));
                }
                if (scatter.isSymmetric()) {
                    these.add(cell(THESE, scatter, error, 2, 3, 2, Promise.FEW, EnumSet.of(Truth.OWN)));
                }
            }
        }
        cells.addAll(these);
        return cells;
    }

    /** Without standards and reference spots nothing can ever be shown consistent at the default margin. */
    private static Set<Truth> truths(Error error) {
        return error == Error.STANDARDLESS ? EnumSet.of(Truth.NOMINAL, Truth.SHIFTED)
            : EnumSet.of(Truth.NOMINAL, Truth.MARGIN, Truth.SHIFTED);
    }

    private static Cell cell(String block, Scatter scatter, Error error, int k, int n, int elements, Promise promise,
                             Set<Truth> truths) {
        Composition alloy = Composition.braze(elements);
        Label label = new Label(block, Integer.toString(k), n, elements, scatter, error.words, "", promise);
        double between = (k + scatter.ordinal()) % 2 == 0 ? QUIET : LOUD;
        Basis basis = k / 2 % 2 == 0 ? Basis.ATOMIC : Basis.MASS;
        NominalCell.Design design =
            new NominalCell.Design(1, k, n, scatter, alloy.alike(between), alloy.alike(WITHIN), 1, SHIFT);
        return new NominalCell(label, truths, design, error.calibration, alloy, alloy.nominal(),
            new Workstation(alloy.elements(), basis, 2 + n % 3, OptionalDouble.empty()));
    }
}
