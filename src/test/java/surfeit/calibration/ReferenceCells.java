package surfeit.calibration;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.calibration.Label.Promise;
import surfeit.composition.Basis;
import surfeit.spot.AccuracyClass;

/** Reference spots in the same run: how many, how well they correlate, what a correlation believed too high does. */
final class ReferenceCells {
    static final String BLOCK = "reference spots";
    private static final double BETWEEN = 0.05;
    private static final Set<Truth> TRUTHS = EnumSet.of(Truth.NOMINAL, Truth.MARGIN, Truth.SHIFTED);
    private static final Composition OTHER_PIECE = Composition.of("Ag 55 Cu 25 Zn 20");

    private ReferenceCells() {
    }

    static List<Cell> all() {
        return List.of(
            cell(1, 3, 2, Scatter.NORMAL, 5, 0.9, 0.9, Promise.FEW),
            cell(2, 3, 3, Scatter.NORMAL, 5, 0.9, 0.9, Promise.FEW),
            cell(3, 3, 2, Scatter.NORMAL, 1, 0.9, 0.9, Promise.FULL),
            cell(3, 3, 2, Scatter.NORMAL, 2, 0.9, 0.9, Promise.FULL),
            cell(3, 3, 2, Scatter.NORMAL, 3, 0.9, 0.9, Promise.FULL),
            cell(3, 3, 2, Scatter.NORMAL, 5, 0.9, 0.9, Promise.FULL),
            cell(6, 2, 4, Scatter.HEAVY, 5, 0.9, 0.9, Promise.FULL),
            cell(10, 1, 6, Scatter.NORMAL, 10, 0.9, 0.9, Promise.FULL),
            cell(3, 3, 2, Scatter.NORMAL, 5, 0.98, 0.98, Promise.FULL),
            cell(5, 4, 5, Scatter.HEAVY, 5, 0.98, 0.98, Promise.FULL),
            cell(8, 2, 3, Scatter.NORMAL, 3, 0.98, 0.98, Promise.FULL),
            otherPiece(4, 3, 5),
            cell(3, 3, 2, Scatter.NORMAL, 5, 0.9, 0.98, Promise.OUTSIDE),
            cell(3, 3, 2, Scatter.NORMAL, 5, 0.9, 0.8, Promise.OUTSIDE),
            cell(6, 2, 4, Scatter.NORMAL, 5, 0.9, 0.8, Promise.OUTSIDE),
            cell(3, 3, 2, Scatter.NORMAL, 5, 0.9, 0.5, Promise.OUTSIDE),
            cell(3, 3, 2, Scatter.NORMAL, 5, 0.98, 0.9, Promise.OUTSIDE));
    }

    private static Cell cell(int k, int n, int elements, Scatter scatter, int spots, double believed, double actual,
                             Promise promise) {
        return cell(k, n, Composition.braze(elements), scatter,
            new Calibration.Piece(spots, believed, actual, GridCells.WITHIN, Optional.empty()), "", promise);
    }

    private static Cell otherPiece(int k, int n, int spots) {
        return cell(k, n, Composition.braze(3), Scatter.NORMAL,
            new Calibration.Piece(spots, 0.9, 0.9, GridCells.WITHIN, Optional.of(OTHER_PIECE)),
            "piece of another alloy", Promise.FULL);
    }

    private static Cell cell(int k, int n, Composition alloy, Scatter scatter, Calibration.Piece piece, String note,
                             Promise promise) {
        String rho = piece.believedRho() == piece.actualRho() ? "rho " + piece.actualRho()
            : "rho " + piece.actualRho() + " taken as " + piece.believedRho();
        Label label = new Label(BLOCK, Integer.toString(k), n, alloy.size(), scatter,
            "standardless, " + piece.spots() + " ref. spots, " + rho, note, promise);
        NominalCell.Design design = new NominalCell.Design(1, k, n, scatter, alloy.alike(BETWEEN),
            alloy.alike(GridCells.WITHIN), 1, GridCells.SHIFT);
        return new NominalCell(label, TRUTHS, design,
            Calibration.of(AccuracyClass.STANDARDLESS).with(piece), alloy, alloy.nominal(),
            new Workstation(alloy.elements(), Basis.ATOMIC, 2, OptionalDouble.empty()));
    }
}
