package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.composition.Basis;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/** Single rules of tables that need no file of their own. */
class TableDetailsTest {

    @Test
    void the_dialect_says_layout_and_unit() {
        Reading wide = Reading.of("label;Ag at%\nP1;1\n");
        Reading inLongForm = Reading.of("label;element;value;unit\nP1;Ag;1;wt%\n");

        assertThat(wide.dialect().layout()).contains(CsvDialect.Layout.WIDE);
        assertThat(wide.dialect().unit()).contains(Basis.ATOMIC);
        assertThat(wide.dialect().decimal()).isEmpty();
        assertThat(inLongForm.dialect().layout()).contains(CsvDialect.Layout.LONG);
        assertThat(inLongForm.dialect().unit()).isEmpty();
    }

    @Test
    void a_session_of_the_request_holds_where_a_row_names_none() {
        Reading reading = Reading.of("label;session;Ag at%\nP1;a;1\nP1;;1\n",
            IntakeOptions.DEFAULT.withSession(Optional.of("b")));

        assertThat(reading.spots()).extracting(spot -> spot.session().orElseThrow()).containsExactly("a", "b");
    }

    @Test
    void uncertainties_are_divided_by_the_samples_level_or_by_that_of_the_header() {
        Reading reading = Reading.of("label;Ag at%;Ag at% u;Cu at%;Cu at% (3 sigma)\nP1;62.4;0.8;37.6;1.2\n",
            IntakeOptions.DEFAULT.withULevel(2));

        assertThat(((ReportedValue.Measured) reading.value(0, "Ag")).uncertainty())
            .isEqualTo(OptionalDouble.of(0.008 / 2));
        assertThat(((ReportedValue.Measured) reading.value(0, "Cu")).uncertainty())
            .isEqualTo(OptionalDouble.of(0.012 / 3));
    }

    @Test
    void the_x_ray_line_comes_from_the_header_or_from_a_column() {
        Reading reading = Reading.of("label;Ag L at%;Cu at%;Cu line\nP1;62.4;37.6;K\n");

        assertThat(((ReportedValue.Measured) reading.value(0, "Ag")).line()).contains("L");
        assertThat(((ReportedValue.Measured) reading.value(0, "Cu")).line()).contains("K");
    }

    @Test
    void columns_beside_a_value_that_cannot_be_used_are_left_out() {
        Reading reading = Reading.of("label;Ag at%;Ag net counts;Ag at% foo;Zn limit;Ag wt%"
            + " u\nP1;62.4;100;x;0.1;0.5\n");

        assertThat(reading.report().leftOut()).extracting(part -> ((LeftOut.Column) part).column() + " "
            + part.reason()).containsExactlyInAnyOrder(
            "3 net and background counts are of use together only", "4 \"foo\" is not understood",
            "5 there is no column with values of Zn", "6 in wt%, the value is in at%");
        assertThat(reading.spots()).hasSize(1);
    }

    @Test
    void an_element_whose_only_column_is_not_understood_is_refused_not_dropped() {
        Reading reading = Reading.of("label;Ag at%;Cu at% norm\nP1;62.4;37.6\n");

        assertThat(reading.fault().detail()).contains("\"norm\", which are not understood");
        assertThat(reading.report().tableRefused()).isTrue();
    }

    @Test
    void a_column_of_a_long_table_that_is_not_understood_is_left_out_beside_one_that_is() {
        Reading reading = Reading.of("label;El;norm. wt%;at%\nP1;Ag;74,3;62,4\nP1;Cu;25,7;37,6\n");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.fraction(0, "Ag")).isEqualTo(0.624);
        assertThat(reading.report().leftOut()).containsExactly(
            new LeftOut.Column(3, "norm. wt%", "\"norm.\" is not understood"));
        assertThat(Reading.of("label;El;norm. wt%\nP1;Ag;74,3\n").report().tableRefused()).isTrue();
    }

    @Test
    void the_fields_own_name_wins_over_another_spelling() {
        Reading reading = Reading.of("Spectrum;label;Ag at%\n7;P1;1\n");

        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1");
        assertThat(reading.report().leftOut()).containsExactly(new LeftOut.Column(1, "Spectrum",
            "another column is named label"));
        assertThat(Reading.of("Spectrum;Spot;Ag at%\n7;P1;1\n").fault().detail())
            .contains("one column for label, found column 1 and column 2");
    }

    @Test
    void net_counts_without_background_counts_are_refused_where_one_is_missing() {
        Reading reading = Reading.of("label;Ag at%;Ag net counts;Ag background"
            + " counts\nP1;62.4;100;\nP2;62.0;;\nP3;61;100;-1\n");

        assertThat(reading.report().faults()).extracting(Fault::place).containsExactly(
            new Place.Cell(2, 4, "Ag background counts", ""), new Place.Cell(4, 4, "Ag background counts", "-1"));
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P2");
    }

    @Test
    void a_row_whose_unit_contradicts_the_header_is_refused() {
        Reading reading = Reading.of("label;unit;Ag at%\nP1;at%;1\nP2;wt%;1\nP3;mol%;1\nP4;;1\n");

        assertThat(reading.report().faults()).extracting(Fault::code)
            .containsExactly(FaultCode.UNIT_MISSING, FaultCode.UNIT_MISSING);
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1", "P4");
    }

    @Test
    void a_row_without_label_or_without_any_value_is_no_spot() {
        Reading reading = Reading.of("label;Ag at%\n;1\nP2;\n\"P\n3\";1\n");

        assertThat(reading.report().faults()).extracting(Fault::code)
            .containsExactly(FaultCode.NAME_INVALID, FaultCode.TOO_FEW_ELEMENTS, FaultCode.NAME_INVALID);
        assertThat(reading.report().faults().get(0).place()).isEqualTo(new Place.Cell(2, 1, "label", ""));
        assertThat(reading.report().faults().get(1).place()).isEqualTo(new Place.Row(3));
        assertThat(reading.report().faults().get(2).detail()).contains("U+000A");
    }

    @Test
    void fields_that_hold_numbers_or_words_refuse_others() {
        Reading reading = Reading.of("label;Ag at%;beam_energy_kev;position;tilt_deg;role;total_percent\n"
            + "P1;1;0;up;91;blank;-3\nP2;1;15;Away_From-Detector;-20;Specimen;99\n");

        assertThat(reading.report().faults()).hasSize(5).extracting(Fault::code)
            .containsOnly(FaultCode.VALUE_OUT_OF_RANGE);
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P2");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', value = {
        "reference | Ag:60.1,Cu:20  | nominal-incomplete",
        "reference | Ag:60.1,Cx:bal | unknown-element",
        "reference | Ag:x,Cu:bal    | value-out-of-range",
        "specimen  | Ag:60,Cu:40    | value-out-of-range"})
    void a_true_composition_that_cannot_be_is_refused_in_its_column(String role, String composition, String code) {
        Reading reading = Reading.of("label;role;true_composition;Ag at%\nR1;" + role + ";" + composition + ";60\n");

        assertThat(reading.fault().code().text()).isEqualTo(code);
        assertThat(reading.cell().column()).isEqualTo(3);
    }

    @Test
    void a_true_composition_may_have_its_own_unit() {
        Reading reading = Reading.of("label;role;true_composition;Ag at%\nR1;reference;Ag:71.9,Cu:28.1 wt%;60\n");

        assertThat(reading.spots().get(0).reference().orElseThrow().trueComposition().basis()).isEqualTo(Basis.MASS);
    }

    @Test
    void rows_of_one_long_spot_must_agree_on_what_they_say_of_it() {
        Reading reading = Reading.of("label;feature;session;element;at%\nP1;a;s;Ag;1\nP1;b;s;Cu;2\n"
            + "P2;a;s;Ag;1\nP2;;;Cu;2\nP2;a;s;Cu;2\nP2;a;s;Ag;3\n");

        assertThat(reading.report().faults()).extracting(Fault::code)
            .containsExactly(FaultCode.DUPLICATE_SPOT, FaultCode.DUPLICATE_SPOT);
        assertThat(reading.report().faults()).extracting(Fault::place).containsExactly(
            new Place.Cell(3, 2, "feature", "b"), new Place.Cell(7, 4, "element", "Ag"));
        assertThat(reading.report().leftOut()).containsExactly(
            new LeftOut.Row(6, "the same element of the same spot with the same value again", "P2"));
    }

    @Test
    void rows_of_a_rejected_long_spot_that_come_back_are_no_spot_of_their_own() {
        Reading reading = Reading.of("label;element;at%\nP1;Ag;x\nP2;Ag;1\nP1;Cu;2\n");

        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P2");
        assertThat(reading.report().tableRefused()).isTrue();
    }

    @Test
    void both_forms_in_one_header_are_refused() {
        assertThat(Reading.of("label;element;at%;Cu at%\nP1;Ag;1;2\n").fault().detail()).contains("found both");
    }

    @Test
    void stated_utf_8_that_is_none_is_refused_and_so_is_a_mark_that_contradicts() {
        byte[] bytes = ("label;Ag at%\n" + "P;1\n".repeat(1)).getBytes(StandardCharsets.UTF_8);
        byte[] broken = bytes.clone();
        broken[13] = (byte) 0xB5;
        byte[] marked = ("\uFEFFlabel;Ag at%\nP;1\n").getBytes(StandardCharsets.UTF_8);

        assertThat(Reading.of(broken, IntakeOptions.DEFAULT.withStated(StatedDialect.NOTHING.withCharset("utf-8")))
            .report().tableRefused()).isTrue();
        assertThat(Reading.of(broken, IntakeOptions.DEFAULT).spots()).extracting(Spot::label).containsExactly("\u00B5");
        StatedDialect wrong = StatedDialect.NOTHING.withCharset("windows-1252");
        assertThat(Reading.of(marked, IntakeOptions.DEFAULT.withStated(wrong)).fault().detail())
            .contains("byte order mark of UTF-8");
    }

    @Test
    void wrong_statements_of_the_dialect_are_refused_with_what_was_expected() {
        assertThatThrownBy(() -> StatedDialect.NOTHING.withDelimiter("x")).hasMessage("delimiter is , ; tab or |, got"
            + " \"x\".");
        assertThatThrownBy(() -> StatedDialect.NOTHING.withDecimal("'")).hasMessageContaining("decimal is . or ,");
        assertThatThrownBy(() -> StatedDialect.NOTHING.withCharset("no such"))
            .hasMessageContaining("charset is a name such as utf-8");
        assertThatThrownBy(() -> StatedDialect.NOTHING.withTimeZone("Berlin"))
            .hasMessageContaining("time_zone is a zone or offset such as");
        assertThatThrownBy(() -> StatedDialect.NOTHING.withUnit("mol%")).hasMessage("unit is at% or wt%, got"
            + " \"mol%\".");
    }

    @Test
    void spots_of_another_form_pass_the_same_gate() {
        SpotIntake intake = new SpotIntake(IntakeLimits.DEFAULT, spot -> { });
        SpotDraft draft = new SpotDraft(IntakeOptions.DEFAULT, NumberReader.withMark('.'));
        for (String value : new String[] {"62.4", "62.40", "62.5"}) {
            draft.clear();
            draft.set(SpotField.LABEL, "P1");
            draft.unit(Basis.ATOMIC);
            draft.put(surfeit.element.Element.of("Ag"), new ReportedValueReader(NumberReader.withMark('.'), 1)
                .value(value));
            intake.offer(new ReadSpot(draft.build(), new Place.Pointer(java.util.OptionalLong.empty(), "/spots/"
                + value, ""), java.util.List.of()));
        }

        assertThat(intake.report().acceptedCount()).isEqualTo(1);
        assertThat(intake.report().leftOut()).extracting(LeftOut::reason).containsExactly("the same spot with the same"
            + " values as in spot 1");
        assertThat(intake.report().faults()).extracting(Fault::detail)
            .containsExactly("Expected every spot once, found \"P1\" again with other values than in spot 1.");
    }

    @Test
    void control_characters_in_a_name_are_refused_and_the_end_mark_of_old_systems_is_no_row() {
        Reading reading = Reading.of("label;Ag at%\n\u0007P1;1\nP2;1\n\u001A");

        assertThat(reading.fault().code()).isEqualTo(FaultCode.NAME_INVALID);
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P2");
    }

    @Test
    void a_name_that_looks_like_another_by_an_invisible_character_is_refused_and_the_character_named() {
        Reading reading = Reading.of("label;feature;Ag at%\nP1;dark patch;1\nP2;dark\u200B patch;1\nP3;\u202Ekrad;1\n"
            + "P4\u2028;\u00E9t\u00E9 \uD83D\uDD2C \u94F6;1\n");

        assertThat(reading.report().faults()).extracting(Fault::code).containsOnly(FaultCode.NAME_INVALID);
        assertThat(reading.report().faults()).extracting(Fault::detail).satisfiesExactly(
            first -> assertThat(first).contains("U+200B"), second -> assertThat(second).contains("U+202E"));
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("P1", "P4");
    }

    @Test
    void a_name_is_one_name_in_whichever_normal_form_it_is_sent() {
        String apart = "Ku\u0308gelchen";
        Reading reading = Reading.of("label;particle;feature;session;element;at%\n1;K\u00FCgelchen;P;s;Ag;1\n1;" + apart
            + ";P;s;Cu;99\n2;" + apart + ";" + apart + ";" + apart + ";Ag;2\n" + apart + ";;;;Ag;3\n");

        assertThat(reading.report().faults()).isEmpty();
        assertThat(reading.spots()).extracting(Spot::label).containsExactly("1", "2", "K\u00FCgelchen");
        assertThat(reading.spots()).extracting(Spot::particle).containsExactly(Optional.of("K\u00FCgelchen"),
            Optional.of("K\u00FCgelchen"), Optional.empty());
        assertThat(reading.spots().get(1).feature()).contains("K\u00FCgelchen");
        assertThat(reading.spots().get(1).session()).contains("K\u00FCgelchen");
        assertThat(Reading.of("label;Ag at%\nK\u00FCgelchen;1\n" + apart + ";1\n").report().repeatedCount()).isEqualTo(1);
    }

    @Test
    void a_name_is_as_long_as_it_is_kept() {
        assertThat(Reading.of("label;Ag at%\n" + "u\u0308".repeat(200) + ";1\n").spots()).hasSize(1);
        assertThat(Reading.of("label;Ag at%\n" + "u\u0308".repeat(201) + ";1\n").fault().code())
            .isEqualTo(FaultCode.NAME_INVALID);
        assertThat(Reading.of("label;Ag at%\n" + "u\u0308".repeat(10_000) + ";1\n").fault().code())
            .isEqualTo(FaultCode.NAME_INVALID);
    }

    @Test
    void a_unit_without_an_element_is_refused_whatever_stands_beside_it() {
        assertThat(Reading.of("label;Ag at%;at% u\nP1;1;1\n").fault().code()).isEqualTo(FaultCode.UNKNOWN_ELEMENT);
        assertThat(Reading.of("label;Ag at%;2 at%\nP1;1;1\n").fault().code()).isEqualTo(FaultCode.UNKNOWN_ELEMENT);
    }

    @Test
    void the_decimal_mark_of_limits_and_uncertainties_counts_too() {
        Reading reading = Reading.of("label;Ag at%;Ag at% u;Zn at%\nP1;62;0,4;<0.3\n");

        assertThat(reading.fault().code()).isEqualTo(FaultCode.MIXED_DECIMAL_MARKS);
        assertThat(reading.cell().columnName()).isEqualTo("Zn at%");
    }
}
