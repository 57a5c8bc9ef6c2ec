package surfeit.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.composition.Nominal;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Judgement;
import surfeit.spot.Sample;

/**
 * The calibration error the program is told of, the one that acts, and the reference spots if any.
 *
 * @param stated accuracy class the sample states
 * @param actual relative standard uncertainty that acts
 * @param law    how it is distributed over runs
 * @param runs   sessions the particles are spread over; one is not named
 * @param runRho correlation of the error between sessions
 */
record Calibration(AccuracyClass stated, double actual, Scatter law, Optional<Piece> reference, int runs,
                   double runRho) {

    /**
     * Reference spots in the same run.
     *
     * @param spots       how many
     * @param believedRho correlation of their calibration error with the specimen's, as the sample states it
     * @param actualRho   the correlation that acts
     * @param within      relative scatter of reference spots
     * @param composition the piece, if it is not the alloy itself
     */
    record Piece(int spots, double believedRho, double actualRho, double within, Optional<Composition> composition) {
    }

    /** The error acts as the class says. */
    static Calibration of(AccuracyClass stated) {
        return new Calibration(stated, stated.relativeUncertainty(), Scatter.NORMAL, Optional.empty(), 1, 1);
    }

    /** Another error acts than the class says. */
    Calibration acting(double relative, Scatter over) {
        return new Calibration(stated, relative, over, reference, runs, runRho);
    }

    Calibration over(int sessions, double rho) {
        return new Calibration(stated, actual, law, reference, sessions, rho);
    }

    /**
     * No shared error is left: five reference spots of the alloy itself that do not scatter and whose error is wholly
     * the specimen's. The program then works with the random part alone.
     */
    static Calibration cancelled() {
        return of(AccuracyClass.STANDARDLESS).with(new Piece(5, 1, 1, 0, Optional.empty()));
    }

    Calibration with(Piece piece) {
        return new Calibration(stated, actual, law, Optional.of(piece), runs, runRho);
    }

    /** The errors of every session. */
    List<RunError> draw(int elements, Dice dice) {
        List<RunError> errors = new ArrayList<>(List.of(RunError.draw(elements, law, dice)));
        while (errors.size() < runs) {
            errors.add(errors.get(0).correlated(runRho, law, dice));
        }
        return errors;
    }

    /** Name of a session; one alone is not named. */
    Optional<String> session(int run) {
        return runs == 1 ? Optional.empty() : Optional.of("session " + (run + 1));
    }

    RunError ofPiece(Piece piece, RunError specimen, Dice dice) {
        return specimen.correlated(piece.actualRho, law, dice);
    }

    Sample sample(Nominal nominal) {
        Sample plain = Sample.of(Optional.empty(), Optional.of(nominal));
        Judgement judged = Judgement.DEFAULT;
        double rho = reference.map(Piece::believedRho).orElse(judged.referenceCorrelation());
        return new Sample(plain.alloy(), plain.nominal(), plain.excludedElements(), stated, plain.form(),
            plain.geometry(), plain.coating(), plain.mount(),
            new Judgement(judged.marginOddsRatio(), judged.alpha(), judged.uLevel(), rho, judged.spotCentre()),
            plain.preparation(), plain.diffractionPhases(), plain.description(), plain.spotsIndependent());
    }
}
