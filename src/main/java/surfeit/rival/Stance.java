package surfeit.rival;

import java.util.Optional;
import surfeit.spot.Form;
import surfeit.spot.Position;
import surfeit.xray.TiltRange;

/**
 * How some spots of a group lay to the detector, as far as that was stated. Immutable, thread-safe.
 *
 * @param position  where on the particle, if stated
 * @param tilt      the local tilt, if every one of these spots states it
 * @param form      what the specimen's surface is like
 * @param spots     how many spots
 */
public record Stance(Optional<Position> position, Optional<Tilt> tilt, Form form, long spots) {
    /** A stated tilt is good to this, degrees (judgement). */
    private static final double TILT_WIDTH_DEG = 5;
    /** Up to this tilt a spot still counts as the top of a particle, degrees (judgement). */
    private static final double TOP_TILT_DEG = 20;
    private static final double ANY_TILT_DEG = 90;

    /** Lowest and highest stated tilt, degrees; positive towards the detector where no position is stated. */
    public record Tilt(double lowDeg, double highDeg) {
    }

    /** Neither position nor tilt is known, and the surface may face anywhere. */
    boolean open() {
        return position.isEmpty() && tilt.isEmpty() && (form == Form.PARTICLE || form == Form.ROUGH);
    }

    /** The effective take-off angles these spots may have had. */
    TiltRange range(double takeOffDeg) {
        if (tilt.isPresent()) {
            return hull(tilted(takeOffDeg, tilt.get().lowDeg()), tilted(takeOffDeg, tilt.get().highDeg()));
        }
        if (position.isPresent()) {
            return position.get() == Position.TOP ? TiltRange.within(takeOffDeg, 0, TOP_TILT_DEG, 0, 180)
                : TiltRange.stated(takeOffDeg, 0, ANY_TILT_DEG, facing(position.get()));
        }
        return open() ? TiltRange.anywhere(takeOffDeg) : TiltRange.polished(takeOffDeg);
    }

    private TiltRange tilted(double takeOffDeg, double tiltDeg) {
        double size = Math.abs(tiltDeg);
        if (position.filter(place -> place != Position.TOP).isPresent()) {
            return TiltRange.stated(takeOffDeg, size, TILT_WIDTH_DEG, facing(position.get()));
        }
        if (size <= TILT_WIDTH_DEG || position.isPresent()) {
            return TiltRange.statedTilt(takeOffDeg, size, TILT_WIDTH_DEG);
        }
        return TiltRange.stated(takeOffDeg, size, TILT_WIDTH_DEG,
            tiltDeg > 0 ? TiltRange.Facing.TOWARDS_DETECTOR : TiltRange.Facing.AWAY_FROM_DETECTOR);
    }

    private static TiltRange hull(TiltRange a, TiltRange b) {
        return new TiltRange(a.nominalDeg(), Math.min(a.lowDeg(), b.lowDeg()), Math.max(a.highDeg(), b.highDeg()),
            a.shadowPossible() || b.shadowPossible());
    }

    private static TiltRange.Facing facing(Position position) {
        return switch (position) {
            case TOWARDS_DETECTOR -> TiltRange.Facing.TOWARDS_DETECTOR;
            case AWAY_FROM_DETECTOR -> TiltRange.Facing.AWAY_FROM_DETECTOR;
            case SIDE, TOP -> TiltRange.Facing.SIDE;
        };
    }
}
