package surfeit.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static surfeit.report.FindingBuilder.finding;
import static surfeit.report.OutcomeBuilder.depleted;
import static surfeit.report.OutcomeBuilder.inconclusive;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.rival.Rival.CouldExplain;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.Reason;

class CsvReportTest {

    @Test
    void each_element_of_each_group_has_a_row_with_full_numbers() throws IOException {
        List<NamedCsvRecord> rows = rows(Invented.answer(Invented.AG_CU, Invented.copperRichPatches()
            .rival(Invented.rival("local tilt", CouldExplain.YES, 1.3))
            .rival(Invented.rival("coating", CouldExplain.NO, 1)).build(), Invented.matrix().build()));
        assertThat(rows).hasSize(4);
        assertCells(rows.get(1), "sample=A7", "revision=7", "by=feature", "group=dark patch", "scope=particles",
            "weak_two_particles=false", "spot_count=12", "particle_count=4", "beam_energy_kev=15.0", "element=Cu",
            "verdict=enriched", "nominal_atomic_percent=39.9", "mean_atomic_percent=78.1", "mean_atomic_percent_u=1.21",
            "enrichment_factor=1.957", "enrichment_factor_low=1.711", "enrichment_factor_high=2.154",
            "odds_ratio_low=1.0", "odds_ratio_high=", "p_value_adjusted=0.0012", "adjustment=holm", "confidence=0.9988",
            "beyond_margin=true", "seen_on_particles=4 of 4", "could_alone_be_explained_by=local tilt");
        assertCells(rows.get(3), "verdict=inconclusive", "reason=calibration", "lean=depleted",
            "not_more_than_factor=1.852", "spots_agree_on_shift=true", "confidence=", "difference_atomic_percent=-8.0",
            "next_step=Measure 5 spots on a reference piece, or compare features");
    }

    @Test
    void ranges_limits_foreign_and_unmeasured_elements_have_their_rows() throws IOException {
        List<NamedCsvRecord> rows = rows(Invented.answer(Invented.AL_SI, new GroupBuilder("rim", 6, "P1", "P2")
            .element(finding("Si", 0.11, 0.13, inconclusive(0, 0.001).because(Reason.LIMIT_ABOVE_NOMINAL))
                .these(depleted(0.01, 0.001).factor(0.5, 0.4, 0.6)).belowLimit(6, 0.2, true).fragileWithout("P1", "P2"))
            .notMeasured("Mg").foreign(Invented.foreign("Fe", 0.012, 0.0085, 0.0155, true))
            .explanationSet("Si", "Mg").build()));
        assertCells(rows.get(0), "nominal_atomic_percent=", "nominal_atomic_percent_low=11.0",
            "nominal_atomic_percent_high=13.0", "below_limit_count=6", "detection_limit_atomic_percent=20.0",
            "detection_limit_assumed=true", "fragile_without=P1; P2", "explanation_set=Si Mg",
            "these_particles_verdict=depleted", "these_particles_enrichment_factor=0.5");
        assertCells(rows.get(1), "element=Mg", "verdict=not_measured", "mean_atomic_percent=");
        assertCells(rows.get(2), "element=Fe", "verdict=foreign", "mean_atomic_percent=",
            "share_of_reported_atomic_percent=1.2", "share_of_reported_atomic_percent_low=0.85",
            "detection_limit_atomic_percent=0.3", "detection_limit_assumed=true");
    }

    @Test
    void column_names_are_unique_and_every_quantity_names_its_unit() throws IOException {
        List<String> names = CsvColumns.ALL.stream().map(CsvColumns.Column::name).toList();
        assertThat(names).doesNotHaveDuplicates().allMatch(name -> name.matches("[a-z_]+"));
        assertThat(names).filteredOn(name -> name.matches(".*(mean|nominal|difference|share).*"))
            .allMatch(name -> name.contains("_percent"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", " =1", "\u0000=1"})
    void a_name_that_a_spreadsheet_would_compute_gets_an_apostrophe(String name) throws IOException {
        GroupBuilder group = new GroupBuilder(name, 6, "P1", "P2", "P3")
            .element("Ag", 0.601, depleted(0.2, 0.01).difference(-0.4, -0.5, -0.3).p(0.01));
        NamedCsvRecord row = rows(Invented.answer(Invented.AG_CU, group.build())).get(0);
        assertThat(row.getField("group")).isEqualTo("'" + name);
        assertThat(row.getField("difference_atomic_percent")).isEqualTo("-40.0");
    }

    @Test
    void ordinary_names_stay_as_they_are_and_quotes_commas_and_lines_are_quoted() throws IOException {
        String name = "matrix, \"old\"\nsecond line";
        GroupBuilder group = new GroupBuilder(name, 6, "P1", "P2", "P3")
            .element("Ag", 0.601, depleted(0.2, 0.01).p(0.01));
        assertThat(rows(Invented.answer(Invented.AG_CU, group.build())).get(0).getField("group")).isEqualTo(name);
    }

    @Test
    void percent_is_free_of_the_last_bit_noise_and_else_exact() {
        assertThat(Percent.of(0.601)).isEqualTo(60.1);
        assertThat(Percent.of(0.07)).isEqualTo(7.0);
        assertThat(Percent.of(1.0 / 3)).isEqualTo(1.0 / 3 * 100);
        assertThat(Percent.of(1.23456789012345e-9)).isEqualTo(1.23456789012345e-7);
        assertThat(Percent.of(Double.POSITIVE_INFINITY)).isInfinite();
        assertThat(Percent.of(Double.NaN)).isNaN();
    }

    @Test
    void an_answer_without_version_or_time_is_refused() {
        assertThatThrownBy(() -> new Provenance(" ", Optional.empty(), Optional.empty(), OptionalLong.empty(), "", Map.of(), Map.of(), List.of()))
            .hasMessageContaining("names its program version and time");
    }

    /** Cells as {@code column=text}. */
    private static void assertCells(NamedCsvRecord row, String... cells) {
        for (String cell : cells) {
            String column = cell.substring(0, cell.indexOf('='));
            assertThat(row.getField(column)).as(column).isEqualTo(cell.substring(column.length() + 1));
        }
    }

    private static List<NamedCsvRecord> rows(Interpretation answer) throws IOException {
        StringBuilder out = new StringBuilder();
        CsvReport.write(answer, Invented.PROVENANCE, out);
        assertThat(out).endsWith("\r\n");
        return CsvReader.builder().ofNamedCsvRecord(out.toString()).stream().toList();
    }
}
