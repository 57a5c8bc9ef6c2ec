package surfeit.storage;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.Basis;
import surfeit.spot.Conditions;
import surfeit.spot.Position;
import surfeit.spot.ReferencePiece;
import surfeit.spot.ReportedValues;
import surfeit.spot.Spot;

/**
 * A spot in bytes and back, without loss: every double to the last bit, every text as it was reported, the order of
 * the elements and the offset of the time.
 *
 * <pre>
 *     form (1)  flags  label  particle? feature? session?  time?  conditions?  reference?  count  count x value
 *     value:    atomic number, kind and flags, texts and numbers that the flags announce
 * </pre>
 * About 75 bytes for a spot of four elements. Stateless, thread-safe.
 */
final class SpotCodec {
    private static final int FORM = 1;

    private static final int PARTICLE = 1;
    private static final int FEATURE = 2;
    private static final int SESSION = 4;
    private static final int ACQUIRED = 8;
    private static final int REFERENCE = 16;
    private static final int SAME_MATERIAL = 32;
    private static final int MASS = 64;

    private static final int BEAM_ENERGY = 1;
    private static final int LIVE_TIME = 2;
    private static final int FEATURE_SIZE = 4;
    private static final int RAW_TOTAL = 8;
    private static final int POSITION = 16;
    private static final int TILT = 32;

    private SpotCodec() {
    }

    static byte[] encode(Spot spot) {
        PackedWriter out = new PackedWriter();
        out.octet(FORM).octet(flags(spot)).text(spot.label());
        out.text(spot.particle()).text(spot.feature()).text(spot.session());
        spot.acquiredTime().ifPresent(time ->
            out.number(time.toEpochSecond()).count(time.getNano()).number(time.getOffset().getTotalSeconds()));
        writeConditions(out, spot.conditions());
        spot.reference().ifPresent(reference -> NominalCodec.write(out, reference.trueComposition()));
        out.count(spot.values().size());
        spot.values().forEach((element, value) -> {
            NominalCodec.element(out, element);
            ValueCodec.write(out, value);
        });
        return out.toBytes();
    }

    static Spot decode(byte[] bytes) {
        return decode(new PackedReader(bytes));
    }

    /** The same for one of many spots, whose names and values were often read before. */
    static Spot decode(byte[] bytes, RepeatedTexts texts) {
        return decode(new PackedReader(bytes, Optional.of(texts)));
    }

    private static Spot decode(PackedReader in) {
        in.requireVersion(FORM, "A spot");
        int flags = in.octet();
        String label = in.text();
        Optional<String> particle = in.text((flags & PARTICLE) != 0);
        Optional<String> feature = in.text((flags & FEATURE) != 0);
        Optional<String> session = in.text((flags & SESSION) != 0);
        Optional<OffsetDateTime> acquired = (flags & ACQUIRED) != 0 ? Optional.of(readTime(in)) : Optional.empty();
        Conditions conditions = readConditions(in);
        Optional<ReferencePiece> reference = (flags & REFERENCE) != 0
            ? Optional.of(new ReferencePiece(NominalCodec.read(in), (flags & SAME_MATERIAL) != 0)) : Optional.empty();
        ReportedValues values = ReportedValues.inTurn(in.size(), () -> NominalCodec.element(in), () -> ValueCodec.read(in));
        in.requireEnd();
        return new Spot(label, particle, feature, session, acquired, conditions, reference,
            (flags & MASS) != 0 ? Basis.MASS : Basis.ATOMIC, values);
    }

    private static int flags(Spot spot) {
        return flag(spot.particle().isPresent(), PARTICLE) | flag(spot.feature().isPresent(), FEATURE)
            | flag(spot.session().isPresent(), SESSION) | flag(spot.acquiredTime().isPresent(), ACQUIRED)
            | flag(spot.isReference(), REFERENCE)
            | flag(spot.reference().map(ReferencePiece::sameMaterial).orElse(false), SAME_MATERIAL)
            | flag(spot.basis() == Basis.MASS, MASS);
    }

    private static int flag(boolean set, int flag) {
        return set ? flag : 0;
    }

    private static OffsetDateTime readTime(PackedReader in) {
        long second = in.number();
        int nano = (int) in.count();
        ZoneOffset offset = ZoneOffset.ofTotalSeconds((int) in.number());
        return Instant.ofEpochSecond(second, nano).atOffset(offset);
    }

    private static void writeConditions(PackedWriter out, Conditions conditions) {
        out.octet(flag(conditions.beamEnergyKev().isPresent(), BEAM_ENERGY)
            | flag(conditions.liveTimeS().isPresent(), LIVE_TIME)
            | flag(conditions.featureSizeUm().isPresent(), FEATURE_SIZE)
            | flag(conditions.rawTotal().isPresent(), RAW_TOTAL)
            | flag(conditions.position().isPresent(), POSITION)
            | flag(conditions.tiltDeg().isPresent(), TILT));
        out.real(conditions.beamEnergyKev()).real(conditions.liveTimeS()).real(conditions.featureSizeUm())
            .real(conditions.rawTotal());
        conditions.position().ifPresent(position -> out.text(position.words()));
        out.real(conditions.tiltDeg());
    }

    private static Conditions readConditions(PackedReader in) {
        int flags = in.octet();
        if (flags == 0) {
            return Conditions.UNKNOWN;
        }
        OptionalDouble beamEnergy = in.real((flags & BEAM_ENERGY) != 0);
        OptionalDouble liveTime = in.real((flags & LIVE_TIME) != 0);
        OptionalDouble featureSize = in.real((flags & FEATURE_SIZE) != 0);
        OptionalDouble rawTotal = in.real((flags & RAW_TOTAL) != 0);
        Optional<Position> position = in.text((flags & POSITION) != 0).map(words ->
            StoredWords.find("position", words, Position.values(), Position::words));
        return new Conditions(beamEnergy, liveTime, featureSize, rawTotal, position, in.real((flags & TILT) != 0));
    }
}
