package surfeit.calibration;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.calibration.Label.Promise;
import surfeit.composition.Basis;
import surfeit.spot.AccuracyClass;

/** Several sessions, calibration errors that are not as stated, and samples for the reliability of confidence. */
final class OtherCells {
    static final String BROKEN = "other calibration error";
    static final String SESSIONS = "several sessions";
    static final String RELIABILITY = "reliability";
    private static final double BETWEEN = 0.05;
    private static final Set<Truth> RELIABLE = EnumSet.of(Truth.NOMINAL, Truth.MARGIN, Truth.ANY);

    private OtherCells() {
    }

    /** Smaller, larger and heavier-tailed than stated; nothing is promised for them. */
    static List<Cell> broken() {
        Calibration calibration = Calibration.of(AccuracyClass.STANDARDLESS);
        double stated = calibration.actual();
        return List.of(
            broken("none acts", calibration.acting(0, Scatter.NORMAL)),
            broken("twice as stated", calibration.acting(2 * stated, Scatter.NORMAL)),
            broken("heavy-tailed over runs", calibration.acting(stated, Scatter.HEAVY)));
    }

    private static Cell broken(String note, Calibration calibration) {
        return cell(new Label(BROKEN, "5", 3, 3, Scatter.NORMAL, calibration.stated().words(), note, Promise.OUTSIDE),
            EnumSet.of(Truth.NOMINAL, Truth.SHIFTED), 5, 3, 3, calibration);
    }

    /**
     * Three sessions or more are the unit that repeats, and the calibration error is kept in full: right where all
     * sessions share it; too wide, which is no fault, where every session has its own.
     */
    static List<Cell> sessions() {
        return List.of(sessions(3, 1, Promise.FULL), sessions(4, 1, Promise.FULL), sessions(4, 0, Promise.OUTSIDE));
    }

    private static Cell sessions(int count, double rho, Promise promise) {
        Label label = new Label(SESSIONS, "8", 2, 3, Scatter.NORMAL, AccuracyClass.STANDARDS_BASED.words(),
            count + (rho == 1 ? " sessions, one error" : " sessions, an error each"), promise);
        return cell(label, EnumSet.of(Truth.NOMINAL, Truth.MARGIN, Truth.SHIFTED), 8, 2, 3,
            Calibration.of(AccuracyClass.STANDARDS_BASED).over(count, rho));
    }

    static List<Cell> reliability() {
        Calibration.Piece piece = new Calibration.Piece(5, 0.9, 0.9, GridCells.WITHIN, Optional.empty());
        return List.of(
            reliability(2, "standards-based", Calibration.of(AccuracyClass.STANDARDS_BASED)),
            reliability(5, "standards-based", Calibration.of(AccuracyClass.STANDARDS_BASED)),
            reliability(2, "standardless", Calibration.of(AccuracyClass.STANDARDLESS)),
            reliability(2, "standardless, 5 ref. spots, rho 0.9",
                Calibration.of(AccuracyClass.STANDARDLESS).with(piece)));
    }

    private static Cell reliability(int elements, String error, Calibration calibration) {
        return cell(new Label(RELIABILITY, "4", 3, elements, Scatter.NORMAL, error, "", Promise.FULL), RELIABLE, 4, 3,
            elements, calibration);
    }

    private static Cell cell(Label label, Set<Truth> truths, int k, int n, int elements, Calibration calibration) {
        Composition alloy = Composition.braze(elements);
        NominalCell.Design design = new NominalCell.Design(1, k, n, Scatter.NORMAL, alloy.alike(BETWEEN),
            alloy.alike(GridCells.WITHIN), 1, GridCells.SHIFT);
        return new NominalCell(label, truths, design, calibration, alloy, alloy.nominal(),
            new Workstation(alloy.elements(), Basis.ATOMIC, 2, OptionalDouble.empty()));
    }
}
