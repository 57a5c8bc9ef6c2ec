package surfeit.intake;

import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.NominalPart;
import surfeit.element.Element;
import surfeit.spot.Conditions;
import surfeit.spot.Counts;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/**
 * Sixty-four bits of what a spot is called and of what it says, for telling repeats in a large upload.
 *
 * <p>What it says is compared as values, not as texts: 62.4 and 62,40 agree, and so do an element that is not reported
 * and one that is not listed.
 */
final class SpotFingerprint {
    private static final long FNV_OFFSET = 0xcbf29ce484222325L;
    private static final long FNV_PRIME = 0x100000001b3L;

    private SpotFingerprint() {
    }

    /** Of the natural key: session, label and time of acquisition. */
    static long ofKey(Optional<String> session, String label, Optional<OffsetDateTime> acquiredTime) {
        long hash = text(text(FNV_OFFSET, label), session.orElse("\0"));
        if (acquiredTime.isPresent()) {
            hash = number(number(hash, acquiredTime.get().toEpochSecond()), acquiredTime.get().getNano());
        }
        return mixed(hash);
    }

    /** Of everything beside the key. */
    static long ofContent(Spot spot) {
        long hash = text(FNV_OFFSET, spot.particle().orElse("\0"));
        hash = text(hash, spot.feature().orElse("\0"));
        hash = number(hash, spot.basis().ordinal());
        hash = conditions(hash, spot.conditions());
        if (spot.reference().isPresent()) {
            hash = number(hash, spot.reference().get().sameMaterial() ? 1 : 2);
            hash = number(hash, spot.reference().get().trueComposition().basis().ordinal());
            long sum = 0;
            for (Map.Entry<Element, NominalPart> part : spot.reference().get().trueComposition().parts().entrySet()) {
                sum += mixed(number(part.getKey().atomicNumber(), part.getValue().hashCode()));
            }
            hash = number(hash, sum);
        }
        long sum = 0;
        for (Map.Entry<Element, ReportedValue> value : spot.values().entrySet()) {
            long one = ofValue(value.getValue());
            sum += one == 0 ? 0 : mixed(number(one, value.getKey().atomicNumber()));
        }
        return mixed(number(hash, sum));
    }

    /** Of what is reported of one element, without how it was printed; zero where nothing is. */
    static long ofValue(ReportedValue value) {
        if (value instanceof ReportedValue.Measured measured) {
            long hash = number(number(FNV_OFFSET, 1), Double.doubleToLongBits(measured.fraction()));
            hash = optional(optional(hash, measured.uncertainty()), measured.limit());
            if (measured.counts().isPresent()) {
                Counts counts = measured.counts().get();
                hash = number(hash, Double.doubleToLongBits(counts.net()));
                hash = number(hash, Double.doubleToLongBits(counts.background()));
            }
            return mixed(measured.line().isPresent() ? text(hash, measured.line().get()) : hash);
        }
        if (value instanceof ReportedValue.BelowLimit below) {
            return mixed(number(number(FNV_OFFSET, 2), Double.doubleToLongBits(below.limitFraction())));
        }
        return value instanceof ReportedValue.NotDetected none
            ? mixed(optional(number(FNV_OFFSET, 3), none.limitFraction())) : 0;
    }

    private static long conditions(long start, Conditions conditions) {
        if (conditions.equals(Conditions.UNKNOWN)) {
            return start;
        }
        long hash = optional(start, conditions.beamEnergyKev());
        hash = optional(hash, conditions.liveTimeS());
        hash = optional(hash, conditions.featureSizeUm());
        hash = optional(hash, conditions.rawTotal());
        hash = optional(hash, conditions.tiltDeg());
        return number(hash, conditions.position().map(Enum::ordinal).orElse(-1));
    }

    private static long optional(long hash, OptionalDouble value) {
        return value.isPresent() ? number(hash, Double.doubleToLongBits(value.getAsDouble())) : number(hash, 7);
    }

    private static long number(long hash, long value) {
        return (hash ^ mixed(value)) * FNV_PRIME;
    }

    private static long text(long start, String text) {
        long hash = start;
        for (int i = 0; i < text.length(); i++) {
            hash = (hash ^ text.charAt(i)) * FNV_PRIME;
        }
        return (hash ^ 0xFFFF) * FNV_PRIME;
    }

    /** Spreads every bit over all; the finisher of MurmurHash3 (Appleby, public domain), from memory. */
    private static long mixed(long value) {
        long hash = (value ^ value >>> 33) * 0xff51afd7ed558ccdL;
        hash = (hash ^ hash >>> 33) * 0xc4ceb9fe1a85ec53L;
        return hash ^ hash >>> 33;
    }
}
