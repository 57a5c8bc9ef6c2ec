package surfeit.intake;

import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.element.Element;
import surfeit.element.Spelling;
import surfeit.spot.Conditions;
import surfeit.spot.Position;
import surfeit.spot.ReferencePiece;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/**
 * One spot in the making: its fields are set from texts as they come, {@link #build} makes the spot and
 * {@link #clear} readies the draft for the next one. A blank text sets nothing; names are kept in Unicode's NFC. Not
 * thread-safe: one per upload.
 */
public final class SpotDraft {
    /** Characters that one composed character may be sent as, at most (Unicode Standard Annex 15, section 9: four). */
    private static final int DECOMPOSED_MAX = 4;

    private final IntakeOptions options;
    private final NumberReader numbers;
    private final TimeReader times;
    private final Map<Element, ReportedValue> values = new LinkedHashMap<>();
    private String label;
    private Optional<String> particle;
    private Optional<String> feature;
    private Optional<String> session;
    private Optional<OffsetDateTime> acquiredTime;
    private OptionalDouble beamEnergyKev;
    private OptionalDouble liveTimeS;
    private OptionalDouble featureSizeUm;
    private OptionalDouble rawTotal;
    private OptionalDouble tiltDeg;
    private Optional<Position> position;
    private Optional<Boolean> isReference;
    private String trueCompositionText;
    private Optional<Nominal> trueComposition;
    private boolean sameMaterial;
    private Optional<Basis> unit;

    /** @param numbers reader of this upload's numbers */
    public SpotDraft(IntakeOptions options, NumberReader numbers) {
        this.options = options;
        this.numbers = numbers;
        this.times = new TimeReader(options.stated().timeZone());
        clear();
    }

    /** Forgets the spot; the next one starts with the stated unit and session alone. */
    public void clear() {
        values.clear();
        label = "";
        particle = Optional.empty();
        feature = Optional.empty();
        session = options.session();
        acquiredTime = Optional.empty();
        beamEnergyKev = OptionalDouble.empty();
        liveTimeS = OptionalDouble.empty();
        featureSizeUm = OptionalDouble.empty();
        rawTotal = OptionalDouble.empty();
        tiltDeg = OptionalDouble.empty();
        position = Optional.empty();
        isReference = Optional.empty();
        trueCompositionText = "";
        trueComposition = Optional.empty();
        sameMaterial = false;
        unit = options.stated().unit();
    }

    /** Sets a field from its text. @throws Refusal if the field cannot hold it */
    public void set(SpotField field, String raw) {
        String text = CellText.strip(raw);
        if (text.isEmpty()) {
            return;
        }
        switch (field) {
            case LABEL -> label = name(text);
            case PARTICLE -> particle = Optional.of(name(text));
            case FEATURE -> feature = Optional.of(name(text));
            case SESSION -> session = Optional.of(name(text));
            case ACQUIRED_TIME -> acquiredTime = Optional.of(times.time(text));
            case BEAM_ENERGY_KEV -> beamEnergyKev = positive(text, 1000, "keV");
            case LIVE_TIME_S -> liveTimeS = positive(text, 1e9, "s");
            case FEATURE_SIZE_UM -> featureSizeUm = positive(text, 1e6, "um");
            case TOTAL_PERCENT -> rawTotal = OptionalDouble.of(total(text));
            case TILT_DEG -> tiltDeg = OptionalDouble.of(tilt(text));
            case POSITION -> position = Optional.of(position(text));
            case ROLE -> isReference = Optional.of(isReference(text));
            case TRUE_COMPOSITION -> trueCompositionText = text;
            case SAME_MATERIAL -> sameMaterial = yes(text);
            case UNIT -> unit(basis(text));
        }
    }

    /** Sets the unit of all values. @throws Refusal if another unit was stated */
    public void unit(Basis basis) {
        if (unit.isPresent() && unit.get() != basis) {
            throw Refusal.expected(FaultCode.UNIT_MISSING, "the unit " + unit.get().unit() + " stated before",
                basis.unit()).of(SpotField.UNIT);
        }
        unit = Optional.of(basis);
    }

    /** Sets the composition of the reference piece, where it came in another form than one line of text. */
    public void trueComposition(Nominal nominal) {
        trueComposition = Optional.of(nominal);
    }

    /** Sets what was reported of an element. @throws Refusal if there are more elements than a spot may list */
    public void put(Element element, ReportedValue value) {
        if (values.size() >= options.limits().elementsPerSpotMax() && !values.containsKey(element)) {
            throw Refusal.expected(FaultCode.UPLOAD_TOO_LARGE, "at most " + options.limits().elementsPerSpotMax()
                + " elements a spot", "more").setting(IntakeLimits.ELEMENTS_SETTING);
        }
        values.put(element, value);
    }

    /** What was reported of an element so far. */
    Optional<ReportedValue> value(Element element) {
        return Optional.ofNullable(values.get(element));
    }

    /** What tells the spot from others of the upload, as far as it is set. */
    long keyFingerprint() {
        return SpotFingerprint.ofKey(session, label, acquiredTime);
    }

    /** The spot. @throws Refusal if it lacks a label, a unit, a value, or the composition of its reference piece */
    public Spot build() {
        if (label.isEmpty()) {
            throw Refusal.expected(FaultCode.NAME_INVALID, "the label of the spot", "none").of(SpotField.LABEL);
        }
        Basis basis = unit.orElseThrow(() -> Refusal.expected(FaultCode.UNIT_MISSING,
            "the unit of the values, at% or wt%", "none").of(SpotField.UNIT));
        if (values.values().stream().allMatch(ReportedValue.NotReported.class::isInstance)) {
            throw Refusal.expected(FaultCode.TOO_FEW_ELEMENTS, "the value of at least one element", "none");
        }
        return new Spot(label, particle, feature, session, acquiredTime, conditions(), reference(basis), basis, values);
    }

    private Conditions conditions() {
        return new Conditions(beamEnergyKev, liveTimeS, featureSizeUm, rawTotal, position, tiltDeg);
    }

    private Optional<ReferencePiece> reference(Basis basis) {
        boolean stated = trueComposition.isPresent() || !trueCompositionText.isEmpty();
        if (!isReference.orElse(false)) {
            if (stated || sameMaterial) {
                throw Refusal.expected(FaultCode.VALUE_OUT_OF_RANGE,
                    "a true composition of a spot with the role reference only", "one of a specimen")
                    .of(stated ? SpotField.TRUE_COMPOSITION : SpotField.SAME_MATERIAL);
            }
            return Optional.empty();
        }
        if (!stated) {
            throw Refusal.expected(FaultCode.NOMINAL_INCOMPLETE, "the true composition of the reference piece", "none")
                .of(SpotField.TRUE_COMPOSITION);
        }
        try {
            Nominal nominal = trueComposition.orElseGet(() -> TrueComposition.parse(trueCompositionText, basis));
            return Optional.of(new ReferencePiece(nominal, sameMaterial));
        } catch (Refusal refusal) {
            throw refusal.of(SpotField.TRUE_COMPOSITION);
        }
    }

    private String name(String raw) {
        boolean mayFit = raw.length() <= DECOMPOSED_MAX * options.limits().labelLengthMax();
        String text = mayFit ? Spelling.composed(raw) : raw;
        if (text.length() > options.limits().labelLengthMax()) {
            throw Refusal.expected(FaultCode.NAME_INVALID, "a name of at most " + options.limits().labelLengthMax()
                + " characters", text.length()).setting(IntakeLimits.LABEL_SETTING);
        }
        for (int i = 0; i < text.length(); i++) {
            int character = text.codePointAt(i);
            if (Character.isISOControl(character) || Character.getType(character) == Character.SURROGATE
                || Spelling.isInvisible(character)) {
                throw Refusal.expected(FaultCode.NAME_INVALID, "a name on one line of whole, visible characters",
                    "the character " + Spelling.numbered(character));
            }
            i += Character.charCount(character) - 1;
        }
        return text;
    }

    private OptionalDouble positive(String text, double most, String unitName) {
        double number = numbers.number(text);
        if (!(number > 0 && number <= most)) {
            throw outside("a number of " + unitName + " above 0 and at most " + (long) most, text);
        }
        return OptionalDouble.of(number);
    }

    private double total(String text) {
        double fraction = numbers.percentAsFraction(text);
        if (!(fraction > 0 && fraction <= 100)) {
            throw outside("a total above 0 and at most 10000 %", text);
        }
        return fraction;
    }

    private double tilt(String text) {
        double degrees = numbers.number(text);
        if (!(Math.abs(degrees) <= 90)) {
            throw outside("a tilt from -90 to 90 degrees", text);
        }
        return degrees;
    }

    private static Position position(String text) {
        for (Position position : Position.values()) {
            if (position.words().equals(plain(text))) {
                return position;
            }
        }
        throw outside("top, towards detector, away from detector or side", text);
    }

    private static boolean isReference(String text) {
        return switch (plain(text)) {
            case "reference" -> true;
            case "specimen" -> false;
            default -> throw outside("specimen or reference", text);
        };
    }

    private static boolean yes(String text) {
        return switch (plain(text)) {
            case "true", "yes", "1" -> true;
            case "false", "no", "0" -> false;
            default -> throw outside("true or false", text);
        };
    }

    private static Basis basis(String text) {
        return UnitWords.basis(text).orElseThrow(() ->
            Refusal.expected(FaultCode.UNIT_MISSING, "the unit at% or wt%", Spelling.quoted(text)));
    }

    private static String plain(String text) {
        return text.toLowerCase(Locale.ROOT).replaceAll("[_\\s-]+", " ");
    }

    private static Refusal outside(String expected, String text) {
        return Refusal.expected(FaultCode.VALUE_OUT_OF_RANGE, expected, Spelling.quoted(text));
    }
}
