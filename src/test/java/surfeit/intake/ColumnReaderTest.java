package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.composition.Basis;
import surfeit.element.Element;

/** Headers as they occur in the trade (common practice, no source). */
class ColumnReaderTest {

    @ParameterizedTest
    @ValueSource(strings = {"Ag at%", "Ag (at%)", "Ag [at.%]", "Ag at.%", "Ag at. %", "Ag atomic %",
        "Ag atomic percent", "Ag Atom%",
        "Ag [Atom-%]", "Ag At.-%", "Ag_at%", "Ag_atomic_percent", "Ag AT%", "at% Ag", "Atomic % Ag", "Ag (Atom %)",
        "Ag: at%",
        "  Ag   at%  ", "Ag\nat%", "Ag\u00A0at%", "Silver at%", "silver (at.%)", "Ag (% atomique)", "Ag % at.",
        "Ag \u539F\u5B50\u767E\u5206\u6BD4", "Ag\uFF08at\uFF05\uFF09", "Ag atomic conc. %"})
    void atomic_percent_is_read_in_any_spelling(String header) {
        assertThat(ColumnReader.read(header)).isEqualTo(quantity("Ag", ColumnMeaning.Kind.VALUE, Basis.ATOMIC, 0, ""));
    }

    @ParameterizedTest
    @ValueSource(strings = {"Cu wt%", "Cu [wt.%]", "Cu weight %", "Cu Weight%", "Cu mass %", "Cu mass percent",
        "Cu Gew.-%", "Cu Ma.-%",
        "Cu Masse-%", "wt% (Cu)", "Cu_wt_pct", "copper wt%", "Cu % massique", "Cu \u8D28\u91CF\u767E\u5206\u6BD4"})
    void mass_percent_is_read_in_any_spelling(String header) {
        assertThat(ColumnReader.read(header)).isEqualTo(quantity("Cu", ColumnMeaning.Kind.VALUE, Basis.MASS, 0, ""));
    }

    @ParameterizedTest
    @CsvSource({"Ag at% u, UNCERTAINTY, 0", "Ag at% sigma, UNCERTAINTY, 0", "Ag at% (2 sigma), UNCERTAINTY, 2",
        "Ag at% 3\u03C3, UNCERTAINTY, 3",
        "Wt% Sigma Ag, UNCERTAINTY, 0", "Ag u, UNCERTAINTY, 0", "Ag net counts, NET_COUNTS, 0",
        "Ag background counts, BACKGROUND_COUNTS, 0",
        "Ag_net_counts, NET_COUNTS, 0", "Ag at% limit, LIMIT, 0", "Ag LOD (at%), LIMIT, 0", "Ag line, LINE, 0",
        "Ag at% foo, UNCLEAR, 0", "Ag at% 2, UNCLEAR, 2", "Ag at% limit 2, UNCLEAR, 2", "Ag at% 4 sigma, UNCLEAR, 0",
        "Ag at% u 2, UNCERTAINTY, 2"})
    void what_stands_beside_a_value_is_told_apart(String header, ColumnMeaning.Kind kind, int level) {
        ColumnMeaning.Quantity quantity = (ColumnMeaning.Quantity) ColumnReader.read(header);

        assertThat(quantity.element()).contains(Element.of("Ag"));
        assertThat(quantity.kind()).isEqualTo(kind);
        assertThat(quantity.uLevel()).isEqualTo(level);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Ag foo", "Ag net counts 2", "foo", "2 sigma foo"})
    void words_that_say_neither_unit_nor_kind_make_no_column_of_an_element(String header) {
        assertThat(ColumnReader.read(header)).isEqualTo(new ColumnMeaning.Other());
    }

    @Test
    void what_is_longer_than_two_hundred_characters_is_no_name() {
        assertThat(ColumnReader.read("Ag" + " ".repeat(195) + "at%"))
            .isEqualTo(quantity("Ag", ColumnMeaning.Kind.VALUE, Basis.ATOMIC, 0, ""));
        assertThat(ColumnReader.read("Ag" + " ".repeat(196) + "at%")).isEqualTo(new ColumnMeaning.Other());
    }

    @ParameterizedTest
    @CsvSource({"Ag L at%, Ag, L", "Ag-L (at%), Ag, L", "Cu K\u03B1 at%, Cu, K\u03B1", "Cu Ka1 [wt%], Cu, Ka1",
        "K K at%, K, K", "Ag L series at%, Ag, L", "AgL at%, Ag, L", "CuKa1 (wt%), Cu, Ka1", "OK at%, O, K",
        "AlK, Al, K"})
    void the_x_ray_line_in_a_header_is_kept(String header, String element, String line) {
        ColumnMeaning.Quantity quantity = (ColumnMeaning.Quantity) ColumnReader.read(header);

        assertThat(quantity.element()).contains(Element.of(element));
        assertThat(quantity.line()).contains(line);
        assertThat(quantity.kind()).isEqualTo(ColumnMeaning.Kind.VALUE);
    }

    @ParameterizedTest
    @CsvSource({"Label, LABEL", "SPECTRUM, LABEL", "spot name, LABEL", "Beam energy (keV), BEAM_ENERGY_KEV",
        "beamEnergyKeV, BEAM_ENERGY_KEV",
        "Live_Time [s], LIVE_TIME_S", "Feature size (\u00B5m), FEATURE_SIZE_UM",
        "Feature size (\u03BCm), FEATURE_SIZE_UM", "Total, TOTAL_PERCENT",
        "Total wt.%, TOTAL_PERCENT", "Tilt (\u00B0), TILT_DEG", "Acquired Time, ACQUIRED_TIME",
        "true composition, TRUE_COMPOSITION"})
    void fields_are_found_whatever_their_case_and_blanks(String header, SpotField field) {
        assertThat(ColumnReader.read(header)).isInstanceOfSatisfying(ColumnMeaning.Field.class,
            found -> assertThat(found.field()).isEqualTo(field));
    }

    @ParameterizedTest
    @ValueSource(strings = {"Remark", "Operator", "In focus", "As measured", "Live time", "Beam energy", "Date", "No.",
        "Sample", "ratio %", "OK", "CK", "lead", "BN", "AlN"})
    void what_is_not_clearly_a_field_or_an_element_is_left_alone(String header) {
        assertThat(ColumnReader.read(header)).isInstanceOf(ColumnMeaning.Other.class);
    }

    @Test
    void symbols_are_matched_exactly_and_the_nearest_is_named() {
        assertThat(ColumnReader.read("CU at%")).isEqualTo(new ColumnMeaning.UnknownElement("CU", Optional.of("Cu")));
        assertThat(ColumnReader.read("Argent at%")).isEqualTo(new ColumnMeaning.UnknownElement("Argent",
            Optional.of("Ag")));
        assertThat(ColumnReader.read("Silber (Atom-%)")).isEqualTo(new ColumnMeaning.UnknownElement("Silber",
            Optional.of("Ag")));
        assertThat(ColumnReader.read("Qq wt%")).isInstanceOf(ColumnMeaning.UnknownElement.class);
    }

    @Test
    void an_element_without_a_unit_is_an_element_without_a_unit() {
        assertThat(ColumnReader.read("Ag")).isEqualTo(new ColumnMeaning.Quantity(Optional.of(Element.of("Ag")),
            ColumnMeaning.Kind.VALUE, Optional.empty(), 0, Optional.empty(), ""));
        assertThat(ColumnReader.read("Ag [%]")).isEqualTo(ColumnReader.read("Ag"));
    }

    private static ColumnMeaning quantity(String element, ColumnMeaning.Kind kind, Basis basis, int level,
        String words) {
        return new ColumnMeaning.Quantity(Optional.of(Element.of(element)), kind, Optional.of(basis), level,
            Optional.empty(), words);
    }
}
