package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import surfeit.element.Element;

/** Readings of tilted, filmed and patched surfaces against an independent Monte Carlo (shared/vectors/physics-*.json). */
class SurfaceReadingsTest {
    private static final Material COPPER_RICH = Material.byVolumes(Map.of(Samples.CU, 0.9253, Samples.AG, 0.0747));
    private static final Material SILVER_RICH = Material.byVolumes(Map.of(Samples.CU, 0.0827, Samples.AG, 0.9173));
    private final ProfileCache profiles = new ProfileCache();

    private static SignalDepthQuery query(Material material, double beam, double tilt, double azimuth) {
        return new SignalDepthQuery(material, List.of(beam), 35, tilt, azimuth, Resolution.USUAL, 0, new TreeSet<>());
    }

    private SurfaceReadings.AtBeamEnergy readings(SignalDepthQuery query, Optional<ThinFilm> film,
                                                  Optional<Patch> patch) {
        return SurfaceReadings.of(new SurfaceReadings.Question(query, film, patch), profiles).readings().get(0);
    }

    private FilmReading film(ThinFilm film, Material material, double beam) {
        return readings(query(material, beam, 0, 0), Optional.of(film), Optional.empty()).film().orElseThrow();
    }

    private PatchReading patch(Material patch, double radiusNm, OptionalDouble thickness, Material around) {
        return readings(query(around, 15, 0, 0), Optional.empty(),
            Optional.of(new Patch(patch, 2 * radiusNm, thickness))).patch().orElseThrow();
    }

    static List<JsonNode> films() {
        return PhysicsVectors.cases("film");
    }

    private static Material named(String name) {
        return switch (name) {
            case "PDMS" -> ResidueTable.standard().byId("silicone-oil").orElseThrow().material();
            case "SiO2" -> ResidueTable.standard().byId("silica").orElseThrow().material();
            default -> Samples.pure(name);
        };
    }

    @ParameterizedTest
    @MethodSource("films")
    void a_simulated_film_gives_as_much_signal_as_the_bounds_allow(JsonNode vector) {
        Line line = PhysicsVectors.line(vector.get("line").asText());
        FilmReading reading = film(new ThinFilm(named(vector.get("film").asText()), vector.get("t_nm").asDouble()),
            named(vector.get("sub").asText()), vector.get("E0").asDouble());
        FilmReading.OfElement one = reading.elements().stream().filter(e -> e.line().equals(line)).findFirst()
            .orElseThrow();
        assertThat(vector.get("k_mc").asDouble())
            .isBetween(one.overPure().orElseThrow().low(), one.overPure().orElseThrow().high());
        ElementReading read = one.read().orElseThrow();
        assertThat(one.bare()).hasValue(0);
        assertThat(read.massFraction().low()).isBetween(0.6 * read.massFraction().value(), read.massFraction().value());
        assertThat(read.atomicFraction().low()).isLessThan(read.atomicFraction().high());
        assertThat(reading.elements().stream().mapToDouble(e -> e.read().orElseThrow().massFraction().value()).sum())
            .isCloseTo(1, within(1e-12));
    }

    // Linear film formula, worked out separately: 5 nm of SiO2 on Au-Si at 10 kV seem to add .27 wt% Si.
    @Test
    void an_oxide_of_five_nanometres_on_gold_silicon_adds_a_quarter_of_a_percent_of_silicon() {
        FilmReading reading = film(new ThinFilm(named("SiO2"), 5), Samples.goldSilicon(), 10);
        FilmReading.OfElement silicon = reading.elements().stream().filter(e -> e.line().element().equals(Samples.SI))
            .findFirst().orElseThrow();
        double oxygen = reading.elements().stream().filter(e -> e.line().element().equals(Samples.O))
            .mapToDouble(e -> e.read().orElseThrow().massFraction().value()).sum();
        // Closed over Si and Au only, as the reported figure is.
        double read = silicon.read().orElseThrow().massFraction().value() / (1 - oxygen);
        assertThat(100 * (read - silicon.bare().orElseThrow())).isCloseTo(0.27, within(0.04));
    }

    @Test
    void hydrogen_of_an_oil_is_named_as_unseen_and_a_film_beyond_the_model_gets_no_reading() {
        FilmReading oil = film(new ThinFilm(named("PDMS"), 50), Samples.goldSilicon(), 15);
        assertThat(oil.withoutLine()).extracting(Element::symbol).containsExactly("H");
        assertThat(oil.elements()).allSatisfy(one -> assertThat(one.read()).isPresent());
        FilmReading thick = film(new ThinFilm(named("PDMS"), 50_000), Samples.goldSilicon(), 15);
        assertThat(thick.elements()).isNotEmpty().allSatisfy(one -> {
            assertThat(one.read()).isEmpty();
            assertThat(one.overPure()).isEmpty();
            assertThat(one.transmission()).isLessThan(0.1);
        });
    }

    static List<JsonNode> patches() {
        return PhysicsVectors.cases("patch");
    }

    @ParameterizedTest
    @MethodSource("patches")
    void a_simulated_patch_reads_within_the_bounds(JsonNode vector) {
        double radius = vector.get("a_nm").asDouble();
        boolean copper = vector.get("sys").asText().startsWith("Cu");
        PatchReading reading = copper ? patch(COPPER_RICH, radius, OptionalDouble.empty(), SILVER_RICH)
            : patch(Samples.pure("Si"), radius, vector.get("sys").asText().startsWith("Si disc")
                ? OptionalDouble.of(200) : OptionalDouble.empty(), Samples.pure("Au"));
        Element element = copper ? Samples.CU : Samples.SI;
        PatchReading.OfElement one = reading.elements().stream().filter(e -> e.line().element().equals(element))
            .findFirst().orElseThrow();
        assertThat(vector.get("wB").asDouble()).isBetween(one.read().massFraction().low() - 1e-9,
            one.read().massFraction().high() + 1e-9);
        if (vector.has("atB")) {
            assertThat(vector.get("atB").asDouble()).isBetween(one.read().atomicFraction().low() - 1e-9,
                one.read().atomicFraction().high() + 1e-9);
        }
    }

    @Test
    void a_patch_of_the_same_material_reads_as_its_surroundings() {
        PatchReading reading = patch(Samples.silverCopper(), 300, OptionalDouble.empty(), Samples.silverCopper());
        assertThat(reading.elements()).hasSize(2).allSatisfy(one -> {
            double own = Samples.silverCopper().massFraction(one.line().element());
            assertThat(one.read().massFraction().low()).isCloseTo(own, within(1e-12));
            assertThat(one.read().massFraction().high()).isCloseTo(own, within(1e-12));
        });
        assertThat(reading.elements().stream().mapToDouble(one -> one.read().atomicFraction().value()).sum())
            .isCloseTo(1, within(1e-12));
    }

    static Stream<JsonNode> tilts() {
        return PhysicsVectors.cases("tilt").stream().filter(vector -> vector.get("tilt").asDouble() != 0);
    }

    @ParameterizedTest
    @MethodSource("tilts")
    void a_simulated_tilt_changes_the_ratio_of_silicon_to_gold_as_the_bounds_allow(JsonNode vector) {
        double tilt = vector.get("tilt").asDouble();
        double azimuth = vector.get("psi").asDouble() == 32.614 ? 90 : 0;
        SignalDepthQuery query = query(Samples.goldSilicon(), 15, tilt, azimuth);
        assertThat(query.effectiveTakeOffDeg()).isCloseTo(vector.get("psi").asDouble(), within(1e-3));
        Estimate read = readings(query, Optional.empty(), Optional.empty()).tilt().orElseThrow().elements().stream()
            .filter(e -> e.line().element().equals(Samples.SI)).findFirst().orElseThrow().read().massFraction();
        double level = Samples.goldSilicon().massFraction(Samples.SI);
        double slack = 3 * vector.get("err").asDouble();
        assertThat(vector.get("mc_rel").asDouble()).isBetween(odds(read.low()) / odds(level) - slack,
            odds(read.high()) / odds(level) + slack);
    }

    private static double odds(double fraction) {
        return fraction / (1 - fraction);
    }

    @Test
    void only_what_was_asked_for_is_answered() {
        SurfaceReadings.AtBeamEnergy level = readings(query(Samples.goldSilicon(), 15, 0, 0), Optional.empty(),
            Optional.empty());
        assertThat(level.tilt()).isEmpty();
        assertThat(level.film()).isEmpty();
        assertThat(level.patch()).isEmpty();
    }

    /** The model's error grows with the change of the take-off angle: a slope of 2 degrees leaves less of it than one of 20. */
    @Test
    void a_tilted_reading_has_bounds_on_both_sides_that_widen_with_the_tilt() {
        double[] below = new double[2];
        double[] above = new double[2];
        for (int i = 0; i < 2; i++) {
            Estimate read = readings(query(Samples.goldSilicon(), 15, i == 0 ? 2 : 20, 0), Optional.empty(), Optional.empty())
                .tilt().orElseThrow().elements().stream().filter(one -> one.line().element().equals(Element.of("Si")))
                .findFirst().orElseThrow().read().massFraction();
            below[i] = 1 - read.low() / read.value();
            above[i] = read.high() / read.value() - 1;
        }
        assertThat(below[0]).isPositive();
        assertThat(above[0]).isPositive();
        assertThat(below[1]).isBetween(2 * below[0], 0.05);
        assertThat(above[1]).isBetween(2 * above[0], 0.05);
        assertThat(above[1] / below[1]).isCloseTo(1, within(0.1));
    }

    @Test
    void a_pure_element_reads_itself_however_tilted() {
        TiltReading tilted = readings(query(Samples.pure("Cu"), 15, 30, 0), Optional.empty(), Optional.empty()).tilt()
            .orElseThrow();
        assertThat(tilted.elements().get(0).read().massFraction()).isEqualTo(new Estimate(1, 1, 1));
        assertThat(tilted.elements().get(0).read().atomicFraction()).isEqualTo(new Estimate(1, 1, 1));
    }

    @Test
    void impossible_patches_are_refused() {
        assertThatThrownBy(() -> new Patch(COPPER_RICH, 0, OptionalDouble.empty())).hasMessageContaining("0.0 nm");
        assertThatThrownBy(() -> new Patch(COPPER_RICH, 500, OptionalDouble.of(-1))).hasMessageContaining("-1.0 nm");
    }
}
