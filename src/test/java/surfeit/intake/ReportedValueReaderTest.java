package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.spot.Counts;
import surfeit.spot.ReportedValue;

class ReportedValueReaderTest {
    private final ReportedValueReader reader = new ReportedValueReader(NumberReader.detecting(), 1);

    @Test
    void a_number_keeps_its_text_and_its_last_digit() {
        ReportedValue.Measured value = (ReportedValue.Measured) reader.value(" 62,40\u00A0");

        assertThat(value.fraction()).isEqualTo(0.624);
        assertThat(value.asReported()).isEqualTo("62,40");
        assertThat(value.roundingStep()).isEqualTo(0.0001);
    }

    @Test
    void a_number_with_the_typographic_minus_keeps_its_last_digit_too() {
        assertThat(((ReportedValue.Measured) reader.value("\u22120.3")).roundingStep()).isEqualTo(0.001);
    }

    @ParameterizedTest
    @ValueSource(strings = {"n.d.", "N.D.", "nd", "n/d", "n. d.", "not detected", "bdl", "b.d.l.", "<LOD", "< LOD",
        "<DL", "<MDL",
        "n.n.", "nicht nachgewiesen", "< NWG"})
    void words_for_not_detected_are_not_detected(String text) {
        assertThat(reader.value(text)).isEqualTo(new ReportedValue.NotDetected(OptionalDouble.empty(), text));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "   ", "-", "--", "\u2013", "\u2014", "n.a.", "n/a", "not analysed"})
    void empty_and_dashes_say_nothing_of_the_element(String text) {
        assertThat(reader.value(text)).isEqualTo(new ReportedValue.NotReported());
    }

    @ParameterizedTest
    @ValueSource(strings = {"<0.3", "< 0.3", "<=0.3", "\u22640.3", "<\u00A00.3"})
    void a_limit_is_read_with_and_without_blanks(String text) {
        assertThat(reader.value(text)).isEqualTo(new ReportedValue.BelowLimit(0.003, text));
    }

    @ParameterizedTest
    @ValueSource(strings = {"<0", "<-1", "<101", "<", "<abc", ">0.3", "151", "150.01", "-10.01", "NaN", "inf", "trace", "#DIV/0!",
        "#N/A", "0x26",
        "62.4 \u00B1 0.4", "1e9"})
    void what_no_element_can_have_is_refused(String text) {
        assertThatThrownBy(() -> reader.value(text)).isInstanceOf(Refusal.class)
            .extracting(refusal -> ((Refusal) refusal).code()).isEqualTo(FaultCode.VALUE_OUT_OF_RANGE);
    }

    @Test
    void the_ends_of_the_possible_range_are_measurements() {
        assertThat(reader.value("-10")).isEqualTo(ReportedValue.Measured.of(-0.1, "-10"));
        assertThat(reader.value("150")).isEqualTo(ReportedValue.Measured.of(1.5, "150"));
        assertThat(((ReportedValue.Measured) reader.value("-0")).fraction()).isEqualTo(0.0);
    }

    @Test
    void an_uncertainty_is_divided_by_the_level_it_is_given_at() {
        assertThat(new ReportedValueReader(NumberReader.detecting(), 2).uncertainty("0.8"))
            .isCloseTo(0.004, within(1e-18));
        assertThatThrownBy(() -> reader.uncertainty("-0.4")).isInstanceOf(Refusal.class);
    }

    @Test
    void uncertainties_limits_and_counts_have_ends_of_their_own() {
        assertThat(reader.uncertainty("0")).isZero();
        assertThat(reader.uncertainty("150")).isEqualTo(1.5);
        assertThatThrownBy(() -> reader.uncertainty("150.01")).isInstanceOf(Refusal.class)
            .hasMessageContaining("from 0 to 150 %").hasMessageContaining("150.01");
        assertThat(reader.limit("100")).isEqualTo(1);
        assertThatThrownBy(() -> reader.limit("100.01")).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> reader.limit("0")).isInstanceOf(Refusal.class).hasMessageContaining("above 0");
        assertThat(reader.netCounts(" -3 ")).isEqualTo(-3);
        assertThat(reader.backgroundCounts(" 0 ")).isZero();
        assertThatThrownBy(() -> reader.backgroundCounts("-1")).isInstanceOf(Refusal.class)
            .hasMessageContaining("at least 0");
    }

    @Test
    void a_line_is_named_in_a_few_characters_or_not_at_all() {
        assertThat(reader.line(" La1 ")).contains("La1");
        assertThat(reader.line("  ")).isEmpty();
        assertThat(reader.line("x".repeat(20))).isPresent();
        assertThatThrownBy(() -> reader.line("x".repeat(21))).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> reader.line("K\u0007a")).isInstanceOf(Refusal.class)
            .hasMessageContaining("an X-ray line such as K or La1");
    }

    @Test
    void a_line_named_beside_a_value_is_not_replaced() {
        ReportedValue named = ReportedValueReader.withLine(reader.value("62.4"), Optional.of("K"));
        assertThat(((ReportedValue.Measured) named).line()).contains("K");
        assertThat(ReportedValueReader.withLine(named, Optional.of("L"))).isEqualTo(named);
        assertThat(ReportedValueReader.withLine(reader.value("<0.2"), Optional.of("L")))
            .isEqualTo(new ReportedValue.BelowLimit(0.002, "<0.2"));
    }

    @Test
    void what_stands_beside_a_value_stays_with_it() {
        ReportedValueReader.Beside beside = new ReportedValueReader.Beside(OptionalDouble.of(0.004),
            Optional.of(new Counts(900, 80)),
            OptionalDouble.of(0.003), Optional.of("L"));

        assertThat(ReportedValueReader.with(reader.value("62.4"), beside))
            .isEqualTo(new ReportedValue.Measured(0.624, "62.4", OptionalDouble.of(0.004),
            Optional.of(new Counts(900, 80)), OptionalDouble.of(0.003), Optional.of("L")));
        assertThat(ReportedValueReader.with(reader.value("n.d."), beside))
            .isEqualTo(new ReportedValue.NotDetected(OptionalDouble.of(0.003), "n.d."));
        assertThat(ReportedValueReader.with(reader.value("<0.2"), beside))
            .isEqualTo(new ReportedValue.BelowLimit(0.002, "<0.2"));
    }
}
