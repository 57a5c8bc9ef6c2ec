package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import surfeit.element.Element;

class FilmedBulkTest {
    private static final Element SI = Samples.SI;
    private static final Element AL = Element.of("Al");

    private static FilmedBulk siliconOn(Material bulk, double beam) {
        return FilmedBulk.of(Samples.pure("Si"), bulk, beam, 35, new ProfileCache()).orElseThrow();
    }

    @Test
    void without_a_film_the_bulk_reads_itself() {
        Map<Element, Double> read = siliconOn(Samples.goldSilicon(), 15).massFractions(0);
        assertThat(read.get(SI)).isCloseTo(0.031553, within(1e-12));
        assertThat(read.get(Samples.AU)).isCloseTo(0.968447, within(1e-12));
    }

    @Test
    void a_film_thicker_than_everything_reads_itself() {
        assertThat(siliconOn(Samples.goldSilicon(), 15).massFractions(1).get(SI)).isCloseTo(1, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"5", "10", "20"})
    void the_first_nanometre_adds_what_the_linear_formula_says(double beam) {
        Material bulk = Samples.goldSilicon();
        double thickness = Samples.pure("Si").massDepth(0.1);
        FilmSignal signal =
            FilmSignal.of(Samples.pure("Si"), bulk, Samples.line("Si", "Ka"), beam, 35, new ProfileCache());
        double added = thickness * signal.profile().surfaceIonisation() / signal.substrateEmission();
        Map<Element, Double> read = siliconOn(bulk, beam).massFractions(thickness);
        double before = 0.031553 / 0.968447;
        // Silicon over gold: the film adds its part and hides of each line what would have come from its place.
        double rise = read.get(SI) / read.get(Samples.AU) - before;
        assertThat(rise).isCloseTo(added / 0.968447, within(0.06 * added / 0.968447));
    }

    static List<JsonNode> filmsOfOneElement() {
        return PhysicsVectors.cases("film").stream().filter(vector -> List.of("Si", "Al")
            .contains(vector.get("film").asText())).toList();
    }

    // Independent Monte Carlo, shared/vectors/physics-film.json: k of the film's line, turned to a mass fraction.
    @ParameterizedTest
    @MethodSource("filmsOfOneElement")
    void simulated_films_are_read_within_the_bounds_of_the_film_model(JsonNode vector) {
        Material film = Samples.pure(vector.get("film").asText());
        Material bulk = Samples.pure(vector.get("sub").asText());
        Element element = film.massFractions().firstKey();
        double beam = vector.get("E0").asDouble();
        double thickness = film.massDepth(vector.get("t_nm").asDouble());
        Line line = PhysicsVectors.line(vector.get("line").asText());
        FilmedBulk filmed = FilmedBulk.of(film, bulk, beam, 35, new ProfileCache()).orElseThrow();
        FilmSignal signal = FilmSignal.of(film, bulk, line, beam, 35, new ProfileCache());
        Map<Element, Double> read = filmed.massFractions(thickness);
        Element host = bulk.massFractions().firstKey();
        double own = vector.get("k_mc").asDouble() * signal.pureEmission() / signal.substrateEmission();
        double expected = own / (own + seenThroughFilm(film, bulk, filmed.line(host), beam, thickness));
        assertThat(read.get(element)).isCloseTo(expected, within(0.15 * expected));
    }

    /** Share of a bulk line left under a film, summed up layer by layer: born below, absorbed in both. */
    private static double seenThroughFilm(Material film, Material bulk, Line line, double beam, double thickness) {
        DepthProfile profile = DepthProfile.of(bulk, line, beam);
        double inBulk = Absorption.chi(line, bulk, 35);
        double inFilm = Absorption.chi(line, film, 35);
        double step = profile.meanMassDepth() / 2000;
        double sum = 0;
        for (double z = thickness + step / 2; z < 20 * profile.meanMassDepth(); z += step) {
            sum += profile.phi(z) * Math.exp(-inFilm * thickness - inBulk * (z - thickness)) * step;
        }
        return sum / profile.emitted(inBulk);
    }

    /** The model read 0.85 to 1.15 of what is true, so true is read / 1.15 to read / 0.85; of a thin film the mass goes with it. */
    @Test
    void bounds_of_a_thin_film_are_those_of_the_film_model() {
        Material film = Samples.pure("Cu");
        FilmedBulk filmed = FilmedBulk.of(film, Samples.pure("Ag"), 15, 35, new ProfileCache()).orElseThrow();
        Estimate read = filmed.readings(film.massDepth(1)).orElseThrow().get(filmed.elements().indexOf(Element.of("Cu")))
            .massFraction();
        assertThat(read.value()).isBetween(1e-4, 0.02);
        assertThat(read.low() / read.value()).isCloseTo(1 / 1.15, within(0.005));
        assertThat(read.high() / read.value()).isCloseTo(1 / 0.85, within(0.005));
    }

    @Test
    void a_film_fades_as_the_beam_energy_rises() {
        Material bulk = Material.byVolumes(Map.of(AL, 0.874, SI, 0.126));
        double thickness = Samples.pure("Si").massDepth(10);
        double last = 1;
        for (double beam : new double[] {4, 5, 8, 12, 20, 30}) {
            double read = siliconOn(bulk, beam).massFractions(thickness).get(SI);
            assertThat(read).isBetween(0.126, last);
            last = read;
        }
    }

    @Test
    void an_element_without_a_line_leaves_no_answer() {
        assertThat(FilmedBulk.of(Samples.pure("Si"), Samples.pure("Cu"), 1.9, 35, new ProfileCache())).isEmpty();
        assertThat(FilmedBulk.of(Samples.pure("Cu"), Samples.pure("Cu"), 15, 35, new ProfileCache())).isPresent();
    }

    @Test
    void only_its_elements_have_a_line() {
        assertThat(siliconOn(Samples.goldSilicon(), 15).line(SI).label()).isEqualTo("Si Ka");
        assertThatThrownBy(() -> siliconOn(Samples.goldSilicon(), 15).line(Samples.CU))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("got Cu");
    }

    @Test
    void what_a_mixed_list_of_elements_weighs_and_whether_its_density_is_known() {
        Map<Element, Double> mass = Material.massFractions(List.of(Samples.AG, Samples.CU),
            new double[] {0.60117, 0.39883});
        assertThat(mass.get(Samples.AG)).isCloseTo(0.719, within(5e-6));
        assertThat(Material.massFractions(List.of(Samples.AG, Samples.CU), new double[] {1.01, -0.01}).get(Samples.CU))
            .isZero();
        assertThat(Material.byVolumesIfKnown(mass).orElseThrow().densityGramPerCm3()).isCloseTo(10.0, within(0.1));
        assertThat(Material.byVolumesIfKnown(Map.of(Samples.O, 0.2, SI, 0.8))).isEmpty();
        assertThat(Material.byVolumesIfKnown(Map.of(Samples.O, 0.005, SI, 0.995))).isPresent();
        Element unknown = new Element(100, "Fm", "fermium", 257, OptionalDouble.empty(), OptionalDouble.empty(), false);
        assertThat(Material.byVolumesIfKnown(Map.of(unknown, 0.5, SI, 0.5))).isEmpty();
    }
}
