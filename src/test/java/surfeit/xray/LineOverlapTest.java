package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.element.Element;
import surfeit.element.ReferenceTable;

class LineOverlapTest {
    private final LineOverlap at15 = new LineOverlap(Resolution.USUAL, 15);

    private Overlap pair(String symbol, String line, String other, String peak) {
        return new LineOverlap(Resolution.USUAL, 30).between(Samples.line(symbol, line),
            LineTable.standard().peaks(Element.of(other)).stream().filter(p -> p.name().equals(peak))
                .findFirst().orElseThrow());
    }

    // X-Ray Data Booklet, table 1-3; classes at 130 eV by this project's convention.
    @ParameterizedTest
    @CsvSource({"As,Ka,Pb,La,7.8,SEVERE", "Cr,Ka,V,Kb,12.6,SEVERE", "S,Ka,Mo,La,14.6,SEVERE",
        "Cd,La,Ag,Lb1,17.2,SEVERE", "Au,Ma,P,Kb,16.2,SEVERE", "Si,Ka,W,Ma,35.4,STRONG", "In,La,Cd,Lb1,29.7,STRONG",
        "Sn,La,In,Lb1,43.2,STRONG", "Au,Ma,Nb,La,43.0,STRONG", "Ti,Ka,Ba,La,44.5,STRONG", "Sb,La,Sn,Lb1,58.1,PARTIAL",
        "Pb,Ma,Bi,Ma,77.1,PARTIAL", "Cu,La,Ni,Lb1,60.9,PARTIAL", "Ge,Ka,Au,La,173.1,SHOULDER",
        "Cu,Ka,Ni,Kb,216.9,SHOULDER", "Zn,Ka,Cu,Kb,266.4,RESOLVED"})
    void known_pairs_have_the_booklet_separation_and_class(String a, String lineA, String b, String lineB,
                                                           double separation, OverlapSeverity severity) {
        Overlap overlap = pair(a, lineA, b, lineB);
        assertThat(overlap.separationEv()).isCloseTo(separation, within(0.11));
        assertThat(overlap.severity()).isEqualTo(severity);
        assertThat(overlap.energies()).isEqualTo(Overlap.EnergySource.BOOKLET);
    }

    @Test
    void every_row_of_the_packaged_overlap_table_that_an_analytical_line_starts_is_reproduced() {
        int compared = 0;
        for (Map<String, String> row : ReferenceTable.packaged("overlaps.csv").rows()) {
            String line = row.get("line_a").replace("1", "");
            String peak = row.get("line_b").replaceAll("^(Ka|Kb|La)1$", "$1");
            boolean analytical = LineTable.standard().line(Element.of(row.get("elem_a")), line).isPresent();
            if (!analytical || row.get("eV_b_booklet").isBlank()) {
                continue;
            }
            Overlap overlap = pair(row.get("elem_a"), line, row.get("elem_b"), peak);
            assertThat(overlap.severity().name().toLowerCase(Locale.ROOT)).as(overlap.toString())
                .isEqualTo(row.get("class"));
            assertThat(overlap.ratio()).isCloseTo(Double.parseDouble(row.get("ratio")), within(0.01));
            compared++;
        }
        assertThat(compared).isGreaterThan(55);
    }

    @Test
    void silicon_and_gold_do_not_overlap() {
        Overlap overlap = pair("Si", "Ka", "Au", "Ma");
        assertThat(overlap.separationEv()).isCloseTo(383, within(5.0));
        assertThat(overlap.severity()).isEqualTo(OverlapSeverity.RESOLVED);
        assertThat(at15.disturbing(Samples.line("Si", "Ka"), Set.of(Samples.AU))).isEmpty();
        assertThat(at15.disturbing(Samples.line("Au", "Ma"), Set.of(Samples.SI))).isEmpty();
    }

    @Test
    void silver_and_copper_do_not_overlap() {
        assertThat(at15.disturbing(Samples.line("Ag", "La"), Set.of(Samples.CU))).isEmpty();
        assertThat(at15.disturbing(Samples.line("Cu", "Ka"), Set.of(Samples.AG))).isEmpty();
    }

    @Test
    void a_gold_coating_collides_with_zirconium_phosphorus_and_niobium() {
        for (String symbol : List.of("Zr", "P", "Nb")) {
            Line line = LineChoice.at(Element.of(symbol), 15).chosen().orElseThrow();
            assertThat(at15.disturbing(line, Set.of(Samples.AU))).as(symbol).isNotEmpty();
        }
    }

    @Test
    void chromium_coating_disturbs_oxygen() {
        assertThat(at15.disturbing(Samples.line("O", "Ka"), Set.of(Element.of("Cr"))))
            .anySatisfy(overlap -> assertThat(overlap.with()).isEqualTo("Cr La"));
    }

    @Test
    void a_peak_of_a_thousandth_raises_no_alarm_unless_its_element_is_in_great_excess() {
        Line tin = Samples.line("Sn", "La");
        Element indium = Element.of("In");
        Element tinElement = Element.of("Sn");
        assertThat(at15.disturbing(tin, Map.of(tinElement, 0.9999, indium, 0.0001))).isEmpty();
        List<Overlap> trace = at15.disturbing(tin, Map.of(tinElement, 0.01, indium, 0.99));
        assertThat(trace).isNotEmpty();
        assertThat(trace.get(0).relativeStrength()).isGreaterThan(10);
    }

    @Test
    void a_shell_the_beam_does_not_reach_disturbs_nothing() {
        Line arsenic = Samples.line("As", "Ka");
        assertThat(at15.disturbing(arsenic, Set.of(Element.of("Pb")))).isNotEmpty();
        assertThat(new LineOverlap(Resolution.USUAL, 12.5).disturbing(arsenic, Set.of(Element.of("Pb"))))
            .as("Pb L3 lies at 13.04 keV").isEmpty();
    }

    @Test
    void m_gamma_is_not_mistaken_for_magnesium() {
        assertThat(at15.disturbing(Samples.line("Bi", "Ma"), Set.of(Samples.AU))).extracting(Overlap::with)
            .contains("Au Mgamma");
    }

    @Test
    void a_line_that_is_not_excited_is_drowned_by_any_peak() {
        LineOverlap at9 = new LineOverlap(Resolution.USUAL, 9);
        Peak nickel = LineTable.standard().peaks(Element.of("Ni")).stream().filter(p -> p.name().equals("Kb"))
            .findFirst().orElseThrow();
        assertThat(at9.between(Samples.line("Zn", "Ka"), nickel).relativeStrength()).isInfinite();
    }

    @Test
    void the_worst_overlap_comes_first() {
        List<Overlap> overlaps = at15.disturbing(Samples.line("S", "Ka"), Set.of(Element.of("Mo"), Element.of("Pb"),
            Element.of("Bi")));
        assertThat(overlaps).isSortedAccordingTo(Overlap.WORST_FIRST);
        assertThat(overlaps.get(0).with()).isEqualTo("Mo La");
    }

    // Least squares by sums over a grid: height of a Gaussian fitted to another of the same width r widths away.
    @Test
    void an_unresolved_peak_adds_what_fitting_one_gaussian_to_the_other_gives() {
        Overlap overlap = pair("Si", "Ka", "W", "Ma");
        double dot = 0;
        double norm = 0;
        for (double x = -6; x <= 6; x += 1e-3) {
            double own = Math.exp(-4 * Math.log(2) * x * x);
            dot += own * Math.exp(-4 * Math.log(2) * (x - overlap.ratio()) * (x - overlap.ratio()));
            norm += own * own;
        }
        assertThat(overlap.unresolvedShare()).isCloseTo(overlap.relativeStrength() * dot / norm, within(1e-6));
    }

    @Test
    void a_class_that_hangs_on_one_electron_volt_says_so() {
        assertThat(pair("Au", "Ma", "Nb", "La").borderline()).as("r = 0.496").isTrue();
        assertThat(pair("As", "Ka", "Pb", "La").borderline()).isFalse();
    }

    @Test
    void lines_missing_from_the_booklet_table_are_compared_by_the_full_list() {
        Overlap overlap = pair("Si", "Ka", "Ta", "Mb");
        assertThat(overlap.energies()).isEqualTo(Overlap.EnergySource.LINE_LIST);
        assertThat(overlap.separationEv()).isCloseTo(29.7, within(0.1));
    }

    @Test
    void foreign_sources_name_elements_to_expect() {
        assertThat(ForeignSource.allElements()).contains(Samples.AU, Samples.C, Element.of("Pt"), Element.of("W"),
            Element.of("F"), Samples.SI, Element.of("Zn"), Element.of("Ce")).doesNotContain(Element.of("Sn"));
    }
}
