package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.element.Element;
import surfeit.element.ElementTable;

class LineTableTest {

    // X-Ray Data Booklet, table 1-3 (Bearden 1967).
    @ParameterizedTest
    @CsvSource({"Si,Ka1,1740.0", "Al,Ka1,1486.7", "Cu,Ka1,8047.8", "Ge,Ka1,9886.4", "Mn,Ka1,5898.8", "Fe,Ka1,6403.8",
        "Au,La1,9713.3", "Mo,La1,2293.2", "Sn,La1,3444.0", "O,Ka1,524.9", "W,Ma,1775.4", "Au,Ma,2122.9"})
    void line_energies_agree_with_the_booklet_to_a_few_electron_volts(String symbol, String name, double bookletEv) {
        Emission emission = LineTable.standard().emissions(Element.of(symbol)).stream()
            .filter(candidate -> candidate.name().equals(name)).findFirst().orElseThrow();
        assertThat(emission.energyKev() * 1000).isCloseTo(bookletEv, within(5.0));
    }

    // Elam, Ravel & Sieber 2002 through XrayDB; edges of the lines' own subshells.
    @ParameterizedTest
    @CsvSource({"Si,Ka,K,1.839", "Al,Ka,K,1.559", "Au,La,L3,11.919", "Au,Ma,M5,2.206", "Ge,Ka,K,11.103",
        "Ge,La,L3,1.217", "Cu,Ka,K,8.979", "Cu,La,L3,0.9327", "Ag,La,L3,3.351", "Sn,La,L3,3.929"})
    void every_analytical_line_carries_the_edge_of_its_own_subshell(String symbol, String name, String edge,
                                                                    double edgeKev) {
        Line line = Samples.line(symbol, name);
        assertThat(line.edge()).isEqualTo(edge);
        assertThat(line.edgeEnergyKev()).isCloseTo(edgeKev, within(1e-3));
    }

    @Test
    void fluorescence_yields_are_those_of_the_subshell() {
        assertThat(Samples.line("Si", "Ka").fluorescenceYield()).isCloseTo(0.0429, within(1e-4));
        assertThat(Samples.line("Cu", "Ka").fluorescenceYield()).isCloseTo(0.441, within(1e-3));
        assertThat(Samples.line("Au", "La").fluorescenceYield()).isCloseTo(0.32, within(1e-3));
        assertThat(Samples.line("Au", "Ma").fluorescenceYield()).isCloseTo(0.0256, within(1e-4));
    }

    // The list holds no Ma and Mb below La and nothing above 30 keV.
    @Test
    void shares_of_one_subshell_add_up_to_one() {
        for (Element element : ElementTable.standard().all()) {
            LineTable.standard().emissions(element).stream()
                .filter(emission -> !emission.edge().startsWith("M") || element.atomicNumber() >= 57)
                .filter(emission -> emission.edgeEnergyKev() < 30)
                .collect(Collectors.groupingBy(Emission::edge, Collectors.summingDouble(Emission::share)))
                .forEach((edge, sum) -> assertThat(sum).as(element + " " + edge).isCloseTo(1, within(0.02)));
        }
    }

    @Test
    void every_analytical_line_stands_for_a_peak_of_the_full_list() {
        for (Element element : ElementTable.standard().all()) {
            for (Line line : LineTable.standard().lines(element)) {
                assertThat(LineTable.standard().peakOf(line).energyKev()).as(line.label())
                    .isCloseTo(line.energyKev(), within(0.01 * line.energyKev()));
            }
        }
    }

    @Test
    void a_doublet_is_one_peak_at_its_stronger_member() {
        Peak peak = LineTable.standard().peakOf(Samples.line("Cu", "Ka"));
        assertThat(peak.strongestMember()).isEqualTo("Ka1");
        assertThat(peak.energyKev()).isEqualTo(8.0463);
        assertThat(peak.share()).isCloseTo(0.577108 + 0.294269, within(1e-9));
    }

    @Test
    void hydrogen_has_no_line() {
        assertThat(LineTable.standard().lines(Element.of("H"))).isEmpty();
        assertThat(LineTable.standard().line(Samples.AG, "Ma")).isEmpty();
    }

    @Test
    void tables_are_known_by_their_checksums() {
        assertThat(LineTable.standard().mainLinesSha256()).hasSize(64)
            .isNotEqualTo(LineTable.standard().allLinesSha256());
    }

    @Test
    void a_line_above_its_edge_is_refused() {
        assertThatThrownBy(() -> new Line(Samples.CU, Family.K, "Ka", 9.1, "K", 8.979, 0.44))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("Cu Ka").hasMessageContaining("9.1");
        assertThatThrownBy(() -> new Line(Samples.CU, Family.K, "Ka", 8.0, "K", 8.979, 1.2))
            .hasMessageContaining("1.2, must lie in 0 to 1");
        assertThatThrownBy(() -> Family.ofEdge("N1")).hasMessageContaining("N1");
        assertThat(Family.ofEdge("M5")).isEqualTo(Family.M);
    }
}
