package surfeit.calibration;

import static surfeit.spot.AccuracyClass.STANDARDLESS;
import static surfeit.spot.AccuracyClass.STANDARDS_BASED;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.calibration.Label.Promise;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalPart;
import surfeit.element.Element;
import surfeit.spot.AccuracyClass;

/**
 * A minor element near or below its limit, ranges as the nominal, and several features in one answer.
 *
 * <p>The alloy is an invented Al-Si powder with 0.6 at% (1.2 mass%) Fe, whose reading scatters from spot to spot by
 * 30 % while the others scatter by 3 %.
 */
final class MinorCells {
    static final String MINOR = "minor element";
    static final String NOT_DETECTED = "not detected";
    static final String RANGE = "range as nominal";
    static final String FEATURES = "several features";
    private static final Composition POWDER = Composition.of("Al 89.4 Si 10 Fe 0.6");
    private static final int SI = 1;
    private static final int FE = 2;
    private static final double[] BETWEEN = {0.02, 0.05, 0.15};
    private static final double[] WITHIN = {0.01, 0.03, 0.3};
    private static final double TRIPLE = Math.log(3);
    private static final Set<Truth> EVERY = EnumSet.of(Truth.NOMINAL, Truth.MARGIN, Truth.SHIFTED);

    private MinorCells() {
    }

    static List<Cell> all() {
        return List.of(
            minor(3, 3, STANDARDS_BASED, Scatter.NORMAL), minor(6, 2, STANDARDLESS, Scatter.NORMAL),
            minor(10, 4, STANDARDS_BASED, Scatter.HEAVY), minor(10, 6, STANDARDLESS, Scatter.NORMAL),
            notDetected(3, 3, 0.8), notDetected(6, 2, 1.2), notDetected(6, 3, 2.0), notDetected(10, 2, 0.8),
            range(3, 3), range(8, 2),
            features(2, 3, STANDARDS_BASED), features(3, 3, STANDARDS_BASED), features(3, 4, STANDARDLESS));
    }

    private static Cell minor(int k, int n, AccuracyClass accuracy, Scatter scatter) {
        Label label = label(MINOR, k, n, scatter, accuracy, "Fe 0.6 at%, x3");
        NominalCell.Design design = new NominalCell.Design(1, k, n, scatter, BETWEEN, WITHIN, FE, TRIPLE);
        return powder(label, EVERY, design, accuracy, POWDER.nominal(), OptionalDouble.empty());
    }

    /** Fe reads below the limit at some, half or nearly all spots (limit 0.8, 1.2 or 2.0 mass%; nominal 1.2). */
    private static Cell notDetected(int k, int n, double limitPercent) {
        Label label = label(NOT_DETECTED, k, n, Scatter.NORMAL, STANDARDS_BASED,
            "limit " + limitPercent + " mass%, nominal 1.2, /3");
        NominalCell.Design design = new NominalCell.Design(1, k, n, Scatter.NORMAL, BETWEEN, WITHIN, FE, -TRIPLE);
        return powder(label, EVERY, design, STANDARDS_BASED, POWDER.nominal(), OptionalDouble.of(limitPercent));
    }

    /** Si lies exactly at the upper limit of its range; the others lie inside theirs. */
    private static Cell range(int k, int n) {
        Map<Element, NominalPart> parts = new LinkedHashMap<>();
        parts.put(POWDER.elements().get(0), new NominalPart.Balance());
        parts.put(POWDER.elements().get(1), new NominalPart.Range(0.08, 0.10));
        parts.put(POWDER.elements().get(2), new NominalPart.Range(0.002, 0.010));
        Label label = label(RANGE, k, n, Scatter.NORMAL, STANDARDS_BASED, "Si at its limit");
        double[] within = {0.01, 0.03, 0.1};
        NominalCell.Design design = new NominalCell.Design(1, k, n, Scatter.NORMAL, BETWEEN, within, SI, 0);
        return powder(label, EnumSet.of(Truth.NOMINAL), design, STANDARDS_BASED, new Nominal(Basis.ATOMIC, parts),
            OptionalDouble.empty());
    }

    private static Label label(String block, int k, int n, Scatter scatter, AccuracyClass accuracy, String note) {
        return new Label(block, Integer.toString(k), n, POWDER.size(), scatter, accuracy.words(), note, Promise.FULL);
    }

    private static Cell powder(Label label, Set<Truth> truths, NominalCell.Design design, AccuracyClass accuracy,
                               Nominal stated, OptionalDouble limitPercent) {
        return new NominalCell(label, truths, design, Calibration.of(accuracy), POWDER, stated,
            new Workstation(POWDER.elements(), Basis.MASS, 2, limitPercent));
    }

    /** Features with particles of their own in one session: their calibration error is one and the same. */
    private static Cell features(int features, int elements, AccuracyClass accuracy) {
        Composition alloy = Composition.braze(elements);
        Label label = new Label(FEATURES, "3", 2, elements, Scatter.NORMAL, accuracy.words(), features + " features",
            Promise.FULL);
        NominalCell.Design design = new NominalCell.Design(features, 3, 2, Scatter.NORMAL, alloy.alike(0.05),
            alloy.alike(GridCells.WITHIN), 1, GridCells.SHIFT);
        return new NominalCell(label, EnumSet.of(Truth.NOMINAL, Truth.SHIFTED), design, Calibration.of(accuracy), alloy,
            alloy.nominal(), new Workstation(alloy.elements(), Basis.ATOMIC, 2, OptionalDouble.empty()));
    }
}
