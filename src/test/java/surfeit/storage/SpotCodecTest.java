package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalPart;
import surfeit.element.Element;
import surfeit.element.ElementTable;
import surfeit.spot.Conditions;
import surfeit.spot.Counts;
import surfeit.spot.Position;
import surfeit.spot.ReferencePiece;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

class SpotCodecTest {

    private static final RepeatedTexts TEXTS = new RepeatedTexts();

    @Property
    void every_spot_comes_back_as_it_was(@ForAll("spots") Spot spot, @ForAll boolean amongMany) {
        byte[] bytes = SpotCodec.encode(spot);
        Spot back = amongMany ? SpotCodec.decode(bytes, TEXTS) : SpotCodec.decode(bytes);

        assertThat(back).isEqualTo(spot);
        assertThat(List.copyOf(back.values().keySet())).isEqualTo(List.copyOf(spot.values().keySet()));
        assertThat(back.acquiredTime().map(OffsetDateTime::getOffset))
            .isEqualTo(spot.acquiredTime().map(OffsetDateTime::getOffset));
    }

    @Test
    void a_spot_of_two_elements_takes_about_as_many_bytes_as_its_line_in_a_table() {
        assertThat(SpotCodec.encode(LabBench.spot("P1-dark-1", "78.8"))).hasSizeLessThan(90);
    }

    @Test
    void bytes_cut_short_or_grown_or_of_a_later_form_are_damage_not_a_spot() {
        byte[] bytes = SpotCodec.encode(LabBench.spot("P1-dark-1", "78.8"));
        for (int length = 0; length < bytes.length; length++) {
            byte[] cut = Arrays.copyOf(bytes, length);
            assertThatThrownBy(() -> SpotCodec.decode(cut)).isInstanceOf(StorageException.class);
        }
        assertThatThrownBy(() -> SpotCodec.decode(Arrays.copyOf(bytes, bytes.length + 1)))
            .isInstanceOf(StorageException.class).hasMessageContaining("1 bytes too many");
        byte[] later = bytes.clone();
        later[0] = 2;
        assertThatThrownBy(() -> SpotCodec.decode(later)).isInstanceOf(StorageException.class)
            .hasMessageContaining("form 2").hasMessageContaining("newer program");
    }

    @Provide
    Arbitrary<Spot> spots() {
        Arbitrary<Optional<String>> word = texts().optional();
        Arbitrary<Map<Element, ReportedValue>> values = Combinators.combine(
            Arbitraries.of(new ArrayList<>(ElementTable.standard().all())).list().uniqueElements().ofMaxSize(8),
            values().list().ofSize(8)).as((elements, list) -> {
                Map<Element, ReportedValue> map = new LinkedHashMap<>();
                elements.forEach(element -> map.put(element, list.get(map.size())));
                return map;
            });
        return Combinators.combine(texts().filter(text -> !text.isBlank()), word, word, word, times().optional(),
            conditions(), references().optional())
            .flatAs((label, particle, feature, session, time, conditions, piece) -> values.map(map ->
                new Spot(label, particle, feature, session, time, conditions, piece,
                    map.size() % 2 == 0 ? Basis.ATOMIC : Basis.MASS, map)));
    }

    private static Arbitrary<String> texts() {
        return Arbitraries.oneOf(Arbitraries.strings().ofMaxLength(20), Arbitraries.strings().alpha().ofMaxLength(20));
    }

    private static Arbitrary<OffsetDateTime> times() {
        return Combinators.combine(Arbitraries.longs().between(-10_000_000_000L, 10_000_000_000L),
            Arbitraries.integers().between(0, 999_999_999), Arbitraries.integers().between(-18 * 60, 18 * 60))
            .as((second, nano, minutes) -> Instant.ofEpochSecond(second, nano)
                .atOffset(ZoneOffset.ofTotalSeconds(minutes * 60)));
    }

    /** Finite doubles of every size, from their bits. */
    private static Arbitrary<Double> finite() {
        return Arbitraries.longs().map(Double::longBitsToDouble).filter(Double::isFinite);
    }

    private static Arbitrary<Double> between(double low, double high) {
        return Arbitraries.longs().between(0, 1L << 53).map(step -> low + (high - low) * (step * 0x1p-53));
    }

    private static Arbitrary<OptionalDouble> positive() {
        return finite().map(Math::abs).filter(value -> value > 0).optional()
            .map(value -> value.map(OptionalDouble::of).orElse(OptionalDouble.empty()));
    }

    private static Arbitrary<OptionalDouble> within(double low, double high) {
        return between(low, high).optional()
            .map(value -> value.map(OptionalDouble::of).orElse(OptionalDouble.empty()));
    }

    private static Arbitrary<Conditions> conditions() {
        return Combinators.combine(positive(), positive(), positive(), positive(),
            Arbitraries.of(Position.values()).optional(), within(-90, 90)).as(Conditions::new);
    }

    private static Arbitrary<ReferencePiece> references() {
        return Combinators.combine(between(0.1, 0.9), Arbitraries.of(true, false),
            Arbitraries.of(Basis.values())).as((share, same, basis) -> new ReferencePiece(new Nominal(basis, Map.of(
                Element.of("Sn"), new NominalPart.Point(share, 0.001),
                Element.of("Ag"), new NominalPart.Range(0, (1 - share) / 2),
                Element.of("Bi"), new NominalPart.Balance())), same));
    }

    private static Arbitrary<ReportedValue> values() {
        Arbitrary<Optional<Counts>> counts =
            Combinators.combine(finite(), finite().map(Math::abs)).as(Counts::new).optional();
        Arbitrary<ReportedValue> measured = Combinators.combine(finite(), texts(), within(0, 1), counts,
            within(1e-9, 1), texts().optional()).as(ReportedValue.Measured::new);
        return Arbitraries.oneOf(measured,
            Combinators.combine(between(1e-9, 1), texts()).as(ReportedValue.BelowLimit::new),
            Combinators.combine(within(1e-9, 1), texts()).as(ReportedValue.NotDetected::new),
            Arbitraries.just(new ReportedValue.NotReported()));
    }
}
