package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;

/** Advice for brazing, solder and casting alloys; edges and energies are those of the packaged tables. */
class BeamAdviceTest {
    private static final BeamQuestion FILM = new BeamQuestion.SurfaceFilm();
    private static final BeamQuestion BULK = new BeamQuestion.Bulk();
    private static final SortedSet<Element> NONE = Collections.emptySortedSet();

    private static Material alloy(String id) {
        NominalFractions nominal = AlloyCatalogue.packaged().require(id).nominal().resolve();
        return Material.byVolumes(Material.massFractions(nominal.elements(), nominal.middles()));
    }

    private static BeamAdvice advice(String id, BeamQuestion question) {
        return BeamAdvice.of(BeamQuery.of(alloy(id), question), new ProfileCache());
    }

    private static BeamAdvice.Recommendation recommendation(String id, BeamQuestion question) {
        return advice(id, question).recommendation().orElseThrow();
    }

    private static BeamRow at(BeamAdvice advice, double beam) {
        return advice.rows().stream().filter(row -> row.beamEnergyKev() == beam).findFirst().orElseThrow();
    }

    private static SignalDepth line(BeamAdvice advice, double beam, Element element) {
        return at(advice, beam).line(element).orElseThrow();
    }

    @Test
    void the_table_runs_from_3_to_30_kev_and_depths_and_widths_grow_along_it() {
        BeamAdvice advice = advice("al-si-eutectic", BULK);
        assertThat(advice.rows()).extracting(BeamRow::beamEnergyKev).startsWith(3.0).endsWith(30.0).isSorted()
            .hasSize(14);
        for (int i = 1; i < advice.rows().size(); i++) {
            assertThat(advice.rows().get(i).deepestHalfNm()).isGreaterThan(advice.rows().get(i - 1).deepestHalfNm());
            assertThat(advice.rows().get(i).largestFilmShare()).isLessThan(advice.rows().get(i - 1).largestFilmShare());
            assertThat(advice.rows().get(i).largestAbsorbedShare()).isGreaterThan(advice.rows().get(i - 1)
                .largestAbsorbedShare());
            assertThat(advice.rows().get(i).lines().get(0).lateralDiameterNm())
                .isGreaterThan(advice.rows().get(i - 1).lines().get(0).lateralDiameterNm());
        }
    }

    /** Edges Ag L3 3.351 and Cu K 8.979 keV: Ag La is excited twice from 6.7 keV, Cu Ka from 18.0 keV on. */
    @Test
    void the_line_of_copper_changes_where_its_harder_one_can_be_had() {
        BeamAdvice advice = advice("ag-cu-eutectic", BULK);
        assertThat(at(advice, 3).line(Samples.AG)).isEmpty();
        assertThat(at(advice, 3).withoutLine()).containsExactly(Samples.AG);
        assertThat(line(advice, 7, Samples.AG).excitation()).isEqualTo(Excitation.USABLE);
        assertThat(line(advice, 6, Samples.AG).excitation()).isEqualTo(Excitation.MARGINAL);
        assertThat(line(advice, 10, Samples.CU).line().name()).isEqualTo("La");
        assertThat(line(advice, 15, Samples.CU).line().name()).isEqualTo("Ka");
        assertThat(line(advice, 15, Samples.CU).excitation()).isEqualTo(Excitation.MARGINAL);
        assertThat(line(advice, 18, Samples.CU).overvoltage()).isCloseTo(18 / 8.979, within(1e-3));
        assertThat(advice.neverSeen()).isEmpty();
    }

    @Test
    void a_film_on_silver_copper_is_looked_for_at_the_lowest_energy_that_excites_both_and_then_four_times_as_deep() {
        BeamAdvice.Recommendation film = recommendation("ag-cu-eutectic", FILM);
        assertThat(film.beamEnergyKev()).isEqualTo(7);
        assertThat(film.secondBeamEnergyKev()).hasValue(18);
        assertThat(film.reason()).startsWith("At 7 keV: Cu La at 7.5 times its edge, Ag La at 2.1 times its edge.")
            .contains("Measure again at 18 keV", "Below 1 keV", "Cu La.");
    }

    @Test
    void the_bulk_of_silver_copper_is_read_by_hard_lines() {
        BeamAdvice.Recommendation bulk = recommendation("ag-cu-eutectic", BULK);
        assertThat(bulk.beamEnergyKev()).isBetween(18.0, 25.0);
        assertThat(bulk.secondBeamEnergyKev()).isEmpty();
        assertThat(bulk.reason()).contains("Cu Ka at 2.", "film of 10 nm makes up").doesNotContain("Below 1 keV");
    }

    @Test
    void tin_bismuth_and_aluminium_silicon_get_what_is_usual_for_them() {
        assertThat(recommendation("bi-sn-eutectic", FILM).beamEnergyKev()).isEqualTo(8);
        assertThat(recommendation("bi-sn-eutectic", BULK).beamEnergyKev()).isBetween(12.0, 20.0);
        assertThat(recommendation("al-si-eutectic", FILM).beamEnergyKev()).isEqualTo(4);
        assertThat(recommendation("al-si-eutectic", BULK).beamEnergyKev()).isBetween(7.0, 12.0);
    }

    @Test
    void the_bulk_energy_errs_least_from_film_and_absorption_together() {
        BeamAdvice advice = advice("bi-sn-eutectic", BULK);
        double taken = advice.recommendation().orElseThrow().beamEnergyKev();
        double least = at(advice, taken).largestFilmShare() + at(advice, taken).largestAbsorptionError();
        assertThat(advice.rows()).filteredOn(row -> row.beamEnergyKev() >= 8)
            .allMatch(row -> row.largestFilmShare() + row.largestAbsorptionError() >= least);
    }

    @Test
    void the_smaller_the_patch_the_lower_the_energy() {
        double last = Double.POSITIVE_INFINITY;
        for (double size : new double[] {20, 3, 1, 0.5}) {
            double beam = recommendation("al-si-eutectic", new BeamQuestion.Patch(size)).beamEnergyKev();
            assertThat(beam).isLessThanOrEqualTo(last);
            last = beam;
        }
        assertThat(last).isEqualTo(4);
    }

    @Test
    void a_large_patch_is_read_as_the_bulk_and_a_tiny_one_with_a_reserve() {
        assertThat(recommendation("bi-sn-eutectic", new BeamQuestion.Patch(50)).beamEnergyKev())
            .isEqualTo(recommendation("bi-sn-eutectic", BULK).beamEnergyKev());
        BeamAdvice tiny = advice("bi-sn-eutectic", new BeamQuestion.Patch(0.2));
        assertThat(tiny.recommendation().orElseThrow().beamEnergyKev()).isEqualTo(8);
        assertThat(tiny.recommendation().orElseThrow().reason()).contains("is sure to read the patch by itself");
        assertThat(at(tiny, 8).smallestPatchShare().orElseThrow()).isLessThan(BeamAdvice.PATCH_ALONE);
        assertThat(at(advice("bi-sn-eutectic", BULK), 8).smallestPatchShare()).isEmpty();
    }

    @Test
    void an_overlap_among_the_alloys_own_lines_is_told() {
        assertThat(recommendation("sac305", BULK).reason()).contains("Ag La is overlapped by Sn Ll; fit both peaks");
        assertThat(at(advice("ag-cu-eutectic", BULK), 20).badOverlap()).isEmpty();
    }

    @Test
    void a_trace_is_in_the_table_but_does_not_decide() {
        BeamAdvice advice = advice("sac305", BULK);
        Element copper = Samples.CU;
        assertThat(line(advice, 15, copper).line().name()).isEqualTo("Ka");
        double taken = advice.recommendation().orElseThrow().beamEnergyKev();
        assertThat(at(advice, taken).line(copper)).isPresent();
        assertThat(advice.recommendation().orElseThrow().reason()).doesNotContain("Cu K");
    }

    @Test
    void an_element_without_a_line_is_named_and_the_others_decide() {
        Material lithiumAluminium = Material.byVolumes(Map.of(Element.of("Al"), 0.97, Element.of("Li"), 0.03));
        BeamAdvice advice = BeamAdvice.of(BeamQuery.of(lithiumAluminium, BULK), new ProfileCache());
        assertThat(advice.neverSeen()).containsExactly(Element.of("Li"));
        assertThat(advice.recommendation()).isPresent();
        Material lithium = Samples.pure("Li");
        assertThat(BeamAdvice.of(BeamQuery.of(lithium, BULK), new ProfileCache()).recommendation()).isEmpty();
    }

    @Test
    void energies_of_ones_own_choice_are_sorted_and_checked() {
        Material alloy = alloy("al-si-eutectic");
        BeamQuery query = new BeamQuery(alloy, BULK, 40, new Resolution(125), 50,
            List.of(20.0, 5.0, 5.0, 10.0), NONE);
        assertThat(query.beamEnergiesKev()).containsExactly(5.0, 10.0, 20.0);
        assertThat(BeamAdvice.of(query, new ProfileCache()).rows()).hasSize(3);
        assertThatThrownBy(() -> new BeamQuery(alloy, BULK, 40, Resolution.USUAL, 0, List.of(), NONE))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("Expected 1 to 64 beam energies");
        assertThatThrownBy(() -> new BeamQuery(alloy, BULK, 40, Resolution.USUAL, 0, List.of(0.5), NONE))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("0.5 keV");
    }

    /** W Ma 1775.4 and Si Ka 1740.0 eV (X-Ray Data Booklet): a tungsten tool shows, but how much of it nobody knows. */
    @Test
    void elements_outside_the_alloy_are_shown_as_overlaps_and_do_not_decide() {
        BeamQuery alone = BeamQuery.of(alloy("al-si-eutectic"), BULK);
        BeamAdvice advice = BeamAdvice.of(new BeamQuery(alone.material(), BULK, alone.takeOffDeg(), alone.resolution(), 0,
            alone.beamEnergiesKev(), new TreeSet<>(List.of(Element.of("W")))), new ProfileCache());
        assertThat(line(advice, 15, Element.of("Si")).overlaps()).extracting(Overlap::with).contains("W Ma");
        assertThat(advice.recommendation()).isEqualTo(BeamAdvice.of(alone, new ProfileCache()).recommendation());
    }

    @Test
    void the_advice_is_said_in_a_sentence() {
        assertThat(advice("ag-cu-eutectic", FILM).answer()).isEqualTo("Take 7 keV and compare it with 18 keV.");
        assertThat(advice("ag-cu-eutectic", BULK).answer()).matches("Take \\d+ keV\\.");
        assertThat(BeamAdvice.of(BeamQuery.of(Samples.pure("Li"), BULK), new ProfileCache()).answer())
            .startsWith("No element of at least 1 % of the mass has a usable line");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void a_patch_has_a_size(double diameterUm) {
        assertThatThrownBy(() -> new BeamQuestion.Patch(diameterUm)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("diameter of a patch");
    }
}
