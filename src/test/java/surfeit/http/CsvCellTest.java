package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Cells that no spreadsheet runs. */
class CsvCellTest {

    @Test
    void a_text_that_looks_like_a_formula_gets_an_apostrophe() {
        assertThat(CsvCell.text("=SUM(A1)")).isEqualTo("'=SUM(A1)");
        assertThat(CsvCell.text("@home")).isEqualTo("'@home");
        assertThat(CsvCell.text("+cmd")).isEqualTo("'+cmd");
        assertThat(CsvCell.text(" =1+1")).isEqualTo("' =1+1");
        assertThat(CsvCell.printed("-cmd")).isEqualTo("'-cmd");
        assertThat(CsvCell.text("\t=1")).isEqualTo("'\t=1");
    }

    @Test
    void plain_texts_and_numbers_stay_as_they_are() {
        assertThat(CsvCell.text("dark patch")).isEqualTo("dark patch");
        assertThat(CsvCell.printed("-0,25")).isEqualTo("-0,25");
        assertThat(CsvCell.printed("-1.5E-2")).isEqualTo("-1.5E-2");
        assertThat(CsvCell.printed("<0.3")).isEqualTo("<0.3");
        assertThat(CsvCell.text("")).isEmpty();
        assertThat(CsvCell.stated(0.601)).isEqualTo("60.1");
        assertThat(CsvCell.number(OptionalDouble.of(Double.POSITIVE_INFINITY))).isEmpty();
    }
}
