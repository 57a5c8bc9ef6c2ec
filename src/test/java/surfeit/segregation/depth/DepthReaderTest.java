package surfeit.segregation.depth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Basis;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.segregation.PhaseSpots;
import surfeit.segregation.answer.DepthReading;
import surfeit.segregation.answer.Estimate;
import surfeit.xray.FilmSignal;
import surfeit.xray.FilmedBulk;
import surfeit.xray.LineTable;
import surfeit.xray.Material;
import surfeit.xray.ProfileCache;

/** Films and deep phases read at several beam energies; spots are invented from a model or a simulation. */
class DepthReaderTest {
    private static final double SPOT_SCATTER = 0.02;

    private final Random random = new Random(5);

    private static NominalFractions nominal(String alloy) {
        return AlloyCatalogue.packaged().require(alloy).nominal().resolve();
    }

    /** Three spots on each of four particles per energy, reading a film of a pure element on the nominal alloy. */
    private PhaseSpots film(String alloy, String element, double thicknessNm, double... beamsKev) {
        NominalFractions nominal = nominal(alloy);
        Material bulk = Material.byVolumes(Material.massFractions(nominal.elements(), nominal.middles()));
        Material film = Material.pure(Element.of(element));
        PhaseSpots spots = PhaseSpots.on(alloy);
        for (double beam : beamsKev) {
            Map<Element, Double> read = FilmedBulk.of(film, bulk, beam, 35, new ProfileCache()).orElseThrow()
                .massFractions(film.massDepth(thicknessNm));
            add(spots, beam, Basis.MASS, nominal.elements().stream().mapToDouble(read::get).toArray());
        }
        return spots;
    }

    private PhaseSpots deep(String alloy, double second, double... beamsKev) {
        PhaseSpots spots = PhaseSpots.on(alloy);
        for (double beam : beamsKev) {
            add(spots, beam, Basis.ATOMIC, 1 - second, second);
        }
        return spots;
    }

    private void add(PhaseSpots spots, double beam, Basis basis, double... fractions) {
        for (int p = 1; p <= 4; p++) {
            for (int s = 0; s < 3; s++) {
                double[] percent = new double[fractions.length];
                double sum = 0;
                for (int i = 0; i < percent.length; i++) {
                    percent[i] = fractions[i] * Math.exp(SPOT_SCATTER * random.nextGaussian());
                    sum += percent[i];
                }
                for (int i = 0; i < percent.length; i++) {
                    percent[i] *= 100 / sum;
                }
                spots.spot("dark patch", "P" + p, OptionalDouble.of(beam), basis, percent);
            }
        }
    }

    private static DepthReading only(PhaseSpots spots) {
        List<DepthReading> readings = spots.interpret().depths();
        assertThat(readings).hasSize(1);
        return readings.get(0);
    }

    @ParameterizedTest
    @CsvSource({"ag-cu-eutectic, Cu, 3", "ag-cu-eutectic, Cu, 10", "bi-sn-eutectic, Bi, 5", "al-si-eutectic, Si, 20"})
    void a_film_is_told_with_its_thickness(String alloy, String element, double thicknessNm) {
        DepthReading reading = only(film(alloy, element, thicknessNm, 5, 20));
        assertThat(reading.word()).isEqualTo(DepthReading.Word.SURFACE_FILM);
        assertThat(reading.element().symbol()).isEqualTo(element);
        Estimate nm = reading.film().orElseThrow().thicknessNm().orElseThrow();
        assertThat(nm.value()).isCloseTo(thicknessNm, within(0.15 * thicknessNm));
        assertThat(thicknessNm).isBetween(nm.low(), nm.high());
        assertThat(nm.low()).isPositive();
        assertThat(reading.energies()).extracting(DepthReading.AtEnergy::beamEnergyKev).containsExactly(5.0, 20.0);
        assertThat(reading.detail()).contains("fades as the beam reaches deeper, as a film", "\u00b5g/cm\u00b2",
            "patch narrow against the X-ray source");
    }

    /**
     * 50 nm of silicone oil (37.874 wt% Si, 0.965 g/cm3: 1.828 ug/cm2 of Si) on gold at 5 and 15 keV, intensities from
     * an independent Monte Carlo (shared/vectors/physics-film.json), on top of what the Au-Si eutectic reads itself.
     */
    @Test
    void a_simulated_oil_film_is_read_back() {
        Element silicon = Element.of("Si");
        NominalFractions nominal = nominal("au-si-eutectic");
        Material bulk = Material.byVolumes(Material.massFractions(nominal.elements(), nominal.middles()));
        PhaseSpots spots = PhaseSpots.on("au-si-eutectic");
        double[][] simulated = {{5, 0.05384204297285239}, {15, 0.006276603134029784}};
        for (double[] each : simulated) {
            FilmSignal signal = FilmSignal.of(Material.pure(silicon), bulk,
                LineTable.standard().line(silicon, "Ka").orElseThrow(),
                each[0], 35, new ProfileCache());
            double share = bulk.massFraction(silicon) + each[1] * signal.pureEmission() / signal.substrateEmission();
            add(spots, each[0], Basis.MASS, 1 - share, share);
        }
        DepthReading reading = only(spots);
        assertThat(reading.word()).isEqualTo(DepthReading.Word.SURFACE_FILM);
        Estimate mass = reading.film().orElseThrow().massThickness();
        assertThat(1.828e-6).isBetween(mass.low(), mass.high());
        assertThat(mass.value()).isCloseTo(1.828e-6, within(0.3e-6));
    }

    @ParameterizedTest
    @CsvSource({"ag-cu-eutectic, 0.8", "ag-cu-eutectic, 0.5", "al-si-eutectic, 0.3"})
    void a_deep_phase_stays_where_a_film_would_fade(String alloy, double second) {
        DepthReading reading = only(deep(alloy, second, 5, 20).standardless());
        assertThat(reading.word()).isEqualTo(DepthReading.Word.DEEP);
        assertThat(reading.film()).isEmpty();
        assertThat(reading.detail()).contains("it stays as the beam reaches deeper, where a film would have faded");
        double shown = reading.energies().get(1).oddsRatio().value();
        assertThat(reading.energies().get(1).filmOddsRatio().orElseThrow()).isLessThan(0.75 * shown);
    }

    /**
     * Copper of four particles at 5 and 20 keV, invented. Computed in Python from the rules as written in prose: nominal
     * 28.41 wt% Cu, calibration 2.5 % and 0.1 wt%, the larger of the p with and without the shared part; particle by
     * particle where both energies saw the same ones, else by Welch and Satterthwaite.
     */
    @ParameterizedTest
    @CsvSource({"P, 0.035307", "Q, 0.547163"})
    void whether_it_stays_is_asked_particle_by_particle_where_both_energies_saw_the_same(String later, double stays) {
        PhaseSpots spots = PhaseSpots.on("ag-cu-eutectic");
        double[] at5 = {58, 62, 66, 70};
        double[] at20 = {60.5, 64.5, 68.2, 72.4};
        for (int p = 0; p < 4; p++) {
            spots.spot("patch", "P" + p, OptionalDouble.of(5), Basis.ATOMIC, 100 - at5[p], at5[p]);
        }
        for (int p = 0; p < 4; p++) {
            spots.spot("patch", later + p, OptionalDouble.of(20), Basis.ATOMIC, 100 - at20[p], at20[p]);
        }
        DepthReading reading = only(spots);
        assertThat(reading.pStays().orElseThrow()).isCloseTo(stays, within(1e-5));
        Estimate odds5 = reading.energies().get(0).oddsRatio();
        assertThat(odds5.value()).isCloseTo(2.639085, within(1e-5));
        assertThat(odds5.low()).isCloseTo(1.847420, within(1e-5));
        assertThat(odds5.high()).isCloseTo(3.769999, within(1e-5));
        Estimate odds20 = reading.energies().get(1).oddsRatio();
        assertThat(odds20.low()).isCloseTo(2.040837, within(1e-5));
        assertThat(odds20.high()).isCloseTo(4.216975, within(1e-5));
        assertThat(reading.detail()).startsWith("Cu has the odds ratio 2.64 at 5 keV and 2.93 at 20 keV; ");
    }

    /**
     * Kanaya and Okayama's range, 27.6 nm A E^1.67 / (Z^0.889 density), from 20 keV down to the edge of copper (8.98 keV),
     * is about 1.0 um in the alloy (A 90, Z 40, 10 g/cm3); X-rays come from the upper half of it on average.
     */
    @Test
    void the_depth_a_deep_phase_reaches_is_the_mean_depth_of_its_line() {
        DepthReading reading = only(deep("ag-cu-eutectic", 0.8, 5, 20).standardless());
        double mean = reading.energies().get(1).meanDepthNm().orElseThrow();
        assertThat(mean).isBetween(200.0, 500.0);
        assertThat(reading.energies().get(0).meanDepthNm().orElseThrow()).isLessThan(mean / 3);
        assertThat(reading.detail()).matches(".*at least as deep as the spots read at 20 keV \\([2-5]\\d0 nm on average\\)\\.");
    }

    @Test
    void a_beam_energy_is_told_with_its_decimals() {
        assertThat(only(deep("ag-cu-eutectic", 0.8, 5.5, 20).standardless()).detail()).contains(" at 5.5 keV and ");
    }

    /** The odds ratio that a film would show where the film was made is the one read; copper has 8.96 g/cm3. */
    @Test
    void the_film_told_would_read_as_the_spots_do() {
        DepthReading reading = only(film("ag-cu-eutectic", "Cu", 10, 5, 20));
        for (DepthReading.AtEnergy each : reading.energies()) {
            assertThat(each.filmOddsRatio().orElseThrow()).isBetween(each.oddsRatio().low(), each.oddsRatio().high());
        }
        Estimate mass = reading.film().orElseThrow().massThickness();
        Matcher told = Pattern.compile("As a film of pure Cu on the nominal alloy it would hold (\\S+) \u00b5g/cm\u00b2 "
            + "\\((\\S+) to (\\S+)\\), (\\S+) nm\\.").matcher(reading.detail());
        assertThat(told.find()).as(reading.detail()).isTrue();
        double[] expected = {mass.value() * 1e6, mass.low() * 1e6, mass.high() * 1e6, mass.value() / 8.96 * 1e7};
        for (int i = 0; i < expected.length; i++) {
            assertThat(Double.parseDouble(told.group(i + 1))).isCloseTo(expected[i], within(0.06 * expected[i]));
        }
    }

    @Test
    void energies_too_close_do_not_tell() {
        DepthReading reading = only(deep("al-si-eutectic", 0.3, 10, 12).standardless());
        assertThat(reading.word()).isEqualTo(DepthReading.Word.CANNOT_TELL);
        assertThat(reading.detail()).contains("neither a film nor a deep phase is excluded",
            "known composition at each of them");
        DepthReading same = only(deep("al-si-eutectic", 0.3, 10, 10.5));
        assertThat(same.word()).isEqualTo(DepthReading.Word.CANNOT_TELL);
        assertThat(same.pStays()).isEmpty();
        assertThat(same.detail()).contains("nearly the same depth");
    }

    @Test
    void a_change_no_larger_than_two_calibrations_can_make_does_not_tell() {
        DepthReading reading = only(film("al-si-eutectic", "Si", 20, 5, 20).standardless());
        assertThat(reading.word()).isEqualTo(DepthReading.Word.CANNOT_TELL);
        assertThat(reading.film()).isPresent();
    }

    @Test
    void an_enrichment_that_falls_towards_the_surface_is_neither() {
        PhaseSpots spots = PhaseSpots.on("al-si-eutectic");
        add(spots, 5, Basis.ATOMIC, 0.8, 0.2);
        add(spots, 20, Basis.ATOMIC, 0.5, 0.5);
        DepthReading reading = only(spots);
        assertThat(reading.word()).isEqualTo(DepthReading.Word.NEITHER);
        assertThat(reading.detail()).contains("it grows as the beam reaches deeper: it lies beneath");
    }

    @Test
    void an_enrichment_that_grows_otherwise_than_under_a_film_is_neither() {
        PhaseSpots spots = PhaseSpots.on("al-si-eutectic");
        add(spots, 5, Basis.ATOMIC, 0.4, 0.6);
        add(spots, 20, Basis.ATOMIC, 0.55, 0.45);
        DepthReading reading = only(spots);
        assertThat(reading.word()).isEqualTo(DepthReading.Word.NEITHER);
        assertThat(reading.detail()).contains("but not as a film on the nominal alloy would");
    }

    @Test
    void more_energies_narrow_the_thickness() {
        Estimate two = only(film("bi-sn-eutectic", "Bi", 5, 5, 20)).film().orElseThrow().massThickness();
        Estimate four = only(film("bi-sn-eutectic", "Bi", 5, 5, 7, 10, 20)).film().orElseThrow().massThickness();
        assertThat(four.high() - four.low()).isLessThan(two.high() - two.low());
    }

    @Test
    void a_wide_feature_is_no_narrow_patch() {
        PhaseSpots spots = PhaseSpots.on("ag-cu-eutectic").featureSizeUm(20);
        add(spots, 5, Basis.ATOMIC, 0.4, 0.6);
        add(spots, 20, Basis.ATOMIC, 0.57, 0.43);
        assertThat(only(spots).detail()).doesNotContain("narrow");
    }

    @Test
    void one_energy_or_nothing_enriched_raises_no_question() {
        assertThat(deep("ag-cu-eutectic", 0.8, 15).interpret().depths()).isEmpty();
        assertThat(deep("ag-cu-eutectic", 0.401, 5, 20).interpret().depths()).isEmpty();
    }

    @Test
    void false_claims_stay_rare_with_errors_of_both_calibrations() {
        int films = 0;
        int deeps = 0;
        int groups = 400;
        for (int run = 0; run < groups; run++) {
            films += word(0.5, 0.5) == DepthReading.Word.SURFACE_FILM ? 1 : 0;
            deeps += word(0.49, 0.407) == DepthReading.Word.DEEP ? 1 : 0;
        }
        assertThat(films).isLessThan(groups * 6 / 100);
        assertThat(deeps).isLessThan(groups * 6 / 100);
    }

    /**
     * Cu fractions as they are at 5 and 20 keV, each read with a standardless error of its own; some raise no question.
     */
    private DepthReading.Word word(double at5, double at20) {
        PhaseSpots spots = PhaseSpots.on("ag-cu-eutectic").standardless();
        for (double[] each : new double[][] {{5, at5}, {20, at20}}) {
            double silver = (1 - each[1]) * Math.exp(0.125 * random.nextGaussian());
            double copper = each[1] * Math.exp(0.125 * random.nextGaussian());
            add(spots, each[0], Basis.ATOMIC, silver / (silver + copper), copper / (silver + copper));
        }
        List<DepthReading> readings = spots.interpret().depths();
        return readings.isEmpty() ? DepthReading.Word.CANNOT_TELL : readings.get(0).word();
    }
}
