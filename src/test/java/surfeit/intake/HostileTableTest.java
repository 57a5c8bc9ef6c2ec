package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Whatever the bytes are, reading them gives spots or faults and never fails. */
class HostileTableTest {

    @Property(tries = 1000)
    void random_bytes_give_faults_and_no_exception(@ForAll byte[] bytes) {
        Reading reading = Reading.of(bytes, IntakeOptions.DEFAULT);

        assertThat(reading.report().faultCount()).isPositive();
        assertThat(reading.spots()).isEmpty();
    }

    @Property(tries = 2000, edgeCases = EdgeCasesMode.NONE)
    void random_pieces_of_tables_give_spots_or_faults(@ForAll("pieces") String text) {
        Reading reading = Reading.of(text);

        assertThat(reading.report().isClean()).isEqualTo(reading.report().faults().isEmpty());
        assertThat(reading.spots().size()).isEqualTo((int) reading.report().acceptedCount());
        assertThat(reading.report().acceptedCount() + reading.report().faultCount()).isPositive();
    }

    @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
    void random_pieces_under_a_known_header_account_for_every_row(@ForAll("rows") List<String> rows) {
        String text = "label;feature;Ag at%;Cu at%\n" + String.join("\n", rows) + "\n";
        Reading reading = Reading.of(text.getBytes(StandardCharsets.UTF_8), IntakeOptions.DEFAULT);
        long leftOutRows = reading.report().leftOut().stream().filter(LeftOut.Row.class::isInstance).count();

        assertThat(reading.report().acceptedCount() + reading.report().rejectedCount() + leftOutRows)
            .isEqualTo(rows.stream().filter(row -> !row.replace(";", "").isBlank()).count());
    }

    @Provide
    Arbitrary<String> pieces() {
        return Arbitraries.of("label", "element", "Ag", "Ag at%", "Cu at%", "Cu wt%", "at%", "u", "unit", "Spectrum",
            ";", ";", ",", "\t", "|",
            "\n", "\n", "\r", "\"", "\"\"", "62.4", "62,4", "<0.3", "n.d.", "Mean", "P1", "P2", "=1+1", "-", "sep=;",
            "\uFEFF", "\uFFFF", "\0",
            "role", "reference", "true_composition", "Ag:60,Cu:40", "\u00A0", "1.234,5").list().ofMaxSize(40)
            .map(parts -> String.join("", parts));
    }

    @Provide
    Arbitrary<List<String>> rows() {
        return Arbitraries.of("P1;a;1;2", "P1;a;1,0;2", "P2;b;1,5;2,5", "P3;b;1.5;2", "Mean;;1;2", ";;;", "",
            "P4;c;x;2", "P5;c;1", "P6;c;1;2;;", "P7;d;;",
            "P8;d;1;2;3", "Summe;;3;4", "\uFFFF", "P9;e;n.d.;<0,3").list().ofMinSize(1).ofMaxSize(12);
    }
}
