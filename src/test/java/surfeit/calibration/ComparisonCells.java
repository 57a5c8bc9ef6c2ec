package surfeit.calibration;

import static surfeit.spot.AccuracyClass.STANDARDLESS;
import static surfeit.spot.AccuracyClass.STANDARDS_BASED;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.calibration.Label.Promise;
import surfeit.composition.Basis;

/** Lot against lot: other particles or the same again, in one session or two, with and without reference spots. */
final class ComparisonCells {
    static final String BLOCK = "comparisons";
    private static final double BETWEEN = 0.07;
    private static final Calibration.Piece FIVE_SPOTS =
        new Calibration.Piece(5, 0.9, 0.9, GridCells.WITHIN, Optional.empty());

    private ComparisonCells() {
    }

    static List<Cell> all() {
        Calibration standards = Calibration.of(STANDARDS_BASED);
        Calibration standardless = Calibration.of(STANDARDLESS);
        Calibration referenced = standardless.with(FIVE_SPOTS);
        return List.of(
            cell(false, true, 3, 3, 3, 2, Scatter.NORMAL, standards, Promise.FULL),
            cell(false, true, 6, 6, 2, 4, Scatter.NORMAL, standardless, Promise.FULL),
            cell(false, true, 4, 8, 2, 3, Scatter.HEAVY, standards, Promise.FULL),
            cell(false, false, 5, 5, 2, 3, Scatter.HEAVY, standards, Promise.FULL),
            cell(false, false, 6, 6, 3, 2, Scatter.NORMAL, standardless, Promise.FULL),
            cell(false, false, 4, 4, 3, 2, Scatter.NORMAL, referenced, Promise.FULL),
            cell(false, false, 8, 8, 2, 4, Scatter.NORMAL, referenced, Promise.FULL),
            cell(true, true, 4, 4, 3, 2, Scatter.NORMAL, standardless, Promise.FULL),
            cell(true, false, 5, 5, 2, 3, Scatter.NORMAL, standards, Promise.FULL),
            cell(false, false, 2, 2, 3, 2, Scatter.NORMAL, standards, Promise.FEW),
            cell(false, false, 4, 8, 2, 2, Scatter.SKEWED, standards, Promise.OUTSIDE));
    }

    private static Cell cell(boolean sameParticles, boolean sameSession, int a, int b, int n, int elements,
                             Scatter scatter, Calibration calibration, Promise promise) {
        Composition alloy = Composition.braze(elements);
        String error = calibration.stated().words()
            + calibration.reference().map(piece -> ", " + piece.spots() + " ref. spots, rho 0.9").orElse("");
        String note = (sameParticles ? "same particles again" : "other particles")
            + (sameSession ? ", same session" : ", other session");
        Label label = new Label(BLOCK, a + "+" + b, n, elements, scatter, error, note, promise);
        return new ComparisonCell(label, EnumSet.of(Truth.NOMINAL, Truth.MARGIN, Truth.SHIFTED),
            new ComparisonCell.Design(sameParticles, sameSession, a, b, n, scatter, BETWEEN, GridCells.WITHIN),
            calibration, alloy, new Workstation(alloy.elements(), Basis.ATOMIC, 2, OptionalDouble.empty()));
    }
}
