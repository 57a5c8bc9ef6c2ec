package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.spot.Conditions;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/** Spots printed as a table in any dialect are read back as they were. */
class RoundTripTest {

    @Property(tries = 400, edgeCases = EdgeCasesMode.NONE)
    void a_wide_table_gives_back_its_spots(@ForAll("tables") PrintedTable table) {
        Reading reading = Reading.of(table.wide(), IntakeOptions.DEFAULT.withStated(table.stated()));

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).isEqualTo(expected(table, true));
        assertThat(reading.dialect().delimiter()).isEqualTo(table.delimiter());
        assertThat(reading.dialect().decimal()).isEqualTo(table.expectedDecimal());
    }

    @Property(tries = 400, edgeCases = EdgeCasesMode.NONE)
    void a_long_table_gives_back_its_spots(@ForAll("tables") PrintedTable table) {
        Reading reading = Reading.of(table.inLongForm(), IntakeOptions.DEFAULT.withStated(table.stated()));

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).isEqualTo(expected(table, false));
    }

    /** In a wide table every spot has a cell for every element of the table; empty ones say nothing. */
    private static List<Spot> expected(PrintedTable table, boolean wide) {
        Map<Element, ReportedValue> empty = new LinkedHashMap<>();
        if (wide) {
            table.spots().forEach(spot ->
                spot.values().keySet().forEach(symbol -> empty.put(Element.of(symbol),
                    new ReportedValue.NotReported())));
        }
        return table.spots().stream().map(printed -> {
            Map<Element, ReportedValue> values = new LinkedHashMap<>(empty);
            printed.values().forEach((symbol, text) -> values.put(Element.of(symbol),
                value(text, table.number(text), printed.us().getOrDefault(symbol, ""))));
            return new Spot(printed.label(), word(printed.particle()), word(printed.feature()), Optional.empty(),
                Optional.empty(),
                Conditions.UNKNOWN, Optional.empty(), Basis.ATOMIC, values);
        }).toList();
    }

    private static ReportedValue value(String text, String asReported, String u) {
        if (text.startsWith("<")) {
            return new ReportedValue.BelowLimit(fraction(text.substring(1)), asReported);
        }
        if (text.equals("n.d.")) {
            return new ReportedValue.NotDetected(OptionalDouble.empty(), asReported);
        }
        return text.isEmpty() ? new ReportedValue.NotReported() : new ReportedValue.Measured(fraction(text), asReported,
            u.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(fraction(u)), Optional.empty(),
            OptionalDouble.empty(), Optional.empty());
    }

    private static double fraction(String percent) {
        return new BigDecimal(percent).movePointLeft(2).doubleValue();
    }

    private static Optional<String> word(String text) {
        return text.isEmpty() ? Optional.empty() : Optional.of(text);
    }

    @Provide
    Arbitrary<PrintedTable> tables() {
        Arbitrary<List<PrintedTable.PrintedSpot>> spots = spots().list().ofMinSize(1).ofMaxSize(6)
            .map(RoundTripTest::withOwnLabels);
        return Combinators.combine(spots, Arbitraries.of(',', ';', '\t', '|'), Arbitraries.of('.', ','),
            Arbitraries.of("\n", "\r\n", "\r"),
            Arbitraries.of(PrintedTable.Encoding.class), Arbitraries.of(true, false), Arbitraries.of(true, false))
            .as(PrintedTable::new);
    }

    private static List<PrintedTable.PrintedSpot> withOwnLabels(List<PrintedTable.PrintedSpot> spots) {
        List<PrintedTable.PrintedSpot> own = new java.util.ArrayList<>();
        for (PrintedTable.PrintedSpot spot : spots) {
            own.add(new PrintedTable.PrintedSpot(spot.label() + own.size(), spot.particle(), spot.feature(),
                spot.values(), spot.us()));
        }
        return own;
    }

    private static Arbitrary<PrintedTable.PrintedSpot> spots() {
        Arbitrary<String> words = Arbitraries.strings().withChars("=+-@'\",;|. <%P1aäöüßµé").ofMaxLength(8)
            .map(String::strip);
        Arbitrary<Map<String, String>> values = Arbitraries.maps(Arbitraries.of("Ag", "Cu", "O", "Sn", "Bi"), values())
            .ofMinSize(1).ofMaxSize(4).map(map -> atLeastOne(new LinkedHashMap<>(map)));
        Arbitrary<Map<String, String>> us = Arbitraries.maps(Arbitraries.of("Ag", "Cu"), decimals(0, 900)).ofMaxSize(2)
            .map(LinkedHashMap::new);
        return Combinators.combine(words, words, words, values, us).as((label, particle, feature, value, u) -> {
            Map<String, String> known = new LinkedHashMap<>(u);
            known.keySet().retainAll(value.keySet());
            return new PrintedTable.PrintedSpot(label, particle, feature, value, known);
        });
    }

    private static Map<String, String> atLeastOne(Map<String, String> values) {
        if (values.values().stream().allMatch(String::isEmpty)) {
            values.put("Cu", "37.6");
        }
        return values;
    }

    private static Arbitrary<String> values() {
        return Arbitraries.frequencyOf(net.jqwik.api.Tuple.of(8, decimals(-999, 14_999)),
            net.jqwik.api.Tuple.of(1, decimals(1, 999).map(text -> "<" + text)),
            net.jqwik.api.Tuple.of(1, Arbitraries.of("n.d.", "")));
    }

    private static Arbitrary<String> decimals(int low, int high) {
        return Combinators.combine(Arbitraries.integers().between(low, high), Arbitraries.integers().between(0, 2))
            .as((number, dropped) -> BigDecimal.valueOf(number, 2)
            .setScale(2 - dropped, java.math.RoundingMode.HALF_EVEN).toPlainString())
            .filter(text -> low != 1 || !new BigDecimal(text).equals(BigDecimal.ZERO)
            && new BigDecimal(text).signum() > 0);
    }
}
