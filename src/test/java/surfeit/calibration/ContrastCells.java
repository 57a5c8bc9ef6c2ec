package surfeit.calibration;

import static surfeit.spot.AccuracyClass.STANDARDLESS;
import static surfeit.spot.AccuracyClass.STANDARDS_BASED;

import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.calibration.ContrastCell.Pairing;
import surfeit.calibration.Label.Promise;
import surfeit.composition.Basis;
import surfeit.spot.AccuracyClass;

/** Dark patch against matrix: on the same particles, on others, in another session. */
final class ContrastCells {
    static final String BLOCK = "contrasts";
    private static final double PARTICLE = 0.08;
    private static final double FEATURE = 0.05;
    /** Within a session, as the program takes it. */
    private static final double SAME_RUN = 0.9;
    private static final Set<Truth> TRUTHS = EnumSet.of(Truth.NOMINAL, Truth.MARGIN, Truth.SHIFTED);

    private ContrastCells() {
    }

    static List<Cell> all() {
        return List.of(
            cell(Pairing.SAME_PARTICLES, 3, 3, 3, 2, Scatter.NORMAL, STANDARDLESS, SAME_RUN, Promise.FULL),
            cell(Pairing.SAME_PARTICLES, 5, 5, 2, 4, Scatter.NORMAL, STANDARDLESS, SAME_RUN, Promise.FULL),
            cell(Pairing.SAME_PARTICLES, 5, 5, 1, 3, Scatter.HEAVY, STANDARDS_BASED, SAME_RUN, Promise.FULL),
            cell(Pairing.SAME_PARTICLES, 10, 10, 4, 6, Scatter.NORMAL, STANDARDS_BASED, SAME_RUN, Promise.FULL),
            cell(Pairing.SAME_PARTICLES, 4, 7, 3, 2, Scatter.NORMAL, STANDARDS_BASED, SAME_RUN, Promise.FULL),
            cell(Pairing.OTHER_PARTICLES, 1, 1, 4, 2, Scatter.NORMAL, STANDARDLESS, SAME_RUN, Promise.FEW),
            cell(Pairing.OTHER_PARTICLES, 2, 2, 3, 2, Scatter.NORMAL, STANDARDLESS, SAME_RUN, Promise.FEW),
            cell(Pairing.OTHER_PARTICLES, 3, 3, 3, 2, Scatter.NORMAL, STANDARDLESS, SAME_RUN, Promise.FULL),
            cell(Pairing.OTHER_PARTICLES, 5, 5, 2, 4, Scatter.HEAVY, STANDARDLESS, SAME_RUN, Promise.FULL),
            cell(Pairing.OTHER_PARTICLES, 4, 8, 2, 3, Scatter.NORMAL, STANDARDS_BASED, SAME_RUN, Promise.FULL),
            cell(Pairing.OTHER_PARTICLES, 10, 10, 1, 5, Scatter.NORMAL, STANDARDS_BASED, SAME_RUN, Promise.FULL),
            cell(Pairing.OTHER_SESSION, 3, 3, 3, 2, Scatter.NORMAL, STANDARDS_BASED, 0, Promise.FULL),
            cell(Pairing.OTHER_SESSION, 6, 6, 2, 4, Scatter.NORMAL, STANDARDLESS, 0, Promise.FULL),
            cell(Pairing.SAME_PARTICLES, 5, 5, 3, 2, Scatter.SKEWED, STANDARDS_BASED, SAME_RUN, Promise.OUTSIDE),
            cell(Pairing.OTHER_PARTICLES, 4, 8, 2, 3, Scatter.SKEWED, STANDARDS_BASED, SAME_RUN, Promise.OUTSIDE),
            cell(Pairing.SAME_PARTICLES, 5, 5, 3, 2, Scatter.NORMAL, STANDARDLESS, 0.5, Promise.OUTSIDE));
    }

    private static Cell cell(Pairing pairing, int dark, int matrix, int n, int elements, Scatter scatter,
                             AccuracyClass accuracy, double rho, Promise promise) {
        Composition alloy = Composition.braze(elements);
        String note = switch (pairing) {
            case SAME_PARTICLES -> "same particles";
            case OTHER_PARTICLES -> "other particles";
            case OTHER_SESSION -> "other session";
        };
        boolean believed = pairing == Pairing.OTHER_SESSION || rho == SAME_RUN;
        Label label = new Label(BLOCK, dark + "+" + matrix, n, elements, scatter, accuracy.words(),
            believed ? note : note + ", rho " + rho + " taken as " + SAME_RUN, promise);
        ContrastCell.Design design = new ContrastCell.Design(pairing, dark, matrix, n, scatter, PARTICLE, FEATURE,
            GridCells.WITHIN, rho);
        Basis basis = elements % 2 == 0 ? Basis.ATOMIC : Basis.MASS;
        return new ContrastCell(label, TRUTHS, design, accuracy, alloy,
            new Workstation(alloy.elements(), basis, 2, OptionalDouble.empty()));
    }
}
