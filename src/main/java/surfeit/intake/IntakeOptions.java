package surfeit.intake;

import java.util.Optional;
import surfeit.element.Spelling;

/**
 * What is known of an upload before it is read.
 *
 * @param stated  what the request says of the table's dialect
 * @param uLevel  how many standard uncertainties a stated {@code u} means: 1, 2 or 3
 * @param session session of spots that name none themselves
 * @param limits  how large the upload may be
 */
public record IntakeOptions(StatedDialect stated, int uLevel, Optional<String> session, IntakeLimits limits) {
    /** Nothing stated, one standard uncertainty, usual limits. */
    public static final IntakeOptions DEFAULT =
        new IntakeOptions(StatedDialect.NOTHING, 1, Optional.empty(), IntakeLimits.DEFAULT);

    public IntakeOptions {
        session = session.map(Spelling::composed);
        if (uLevel < 1 || uLevel > 3) {
            throw new IllegalArgumentException("u_level is 1, 2 or 3, got " + uLevel + ".");
        }
    }

    public IntakeOptions withStated(StatedDialect other) {
        return new IntakeOptions(other, uLevel, session, limits);
    }

    public IntakeOptions withULevel(int other) {
        return new IntakeOptions(stated, other, session, limits);
    }

    public IntakeOptions withSession(Optional<String> other) {
        return new IntakeOptions(stated, uLevel, other, limits);
    }

    public IntakeOptions withLimits(IntakeLimits other) {
        return new IntakeOptions(stated, uLevel, session, other);
    }
}
