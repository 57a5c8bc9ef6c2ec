package surfeit.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.element.Element;
import surfeit.report.Invented;
import surfeit.segregation.SampleComparison;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.Contrast.Word;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.Scope;
import surfeit.segregation.blocks.SpotSource;
import surfeit.segregation.contrast.ComparedSample;
import surfeit.segregation.contrast.ComparisonAnswer;
import surfeit.spot.Conditions;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

class ContrastFigureTest {

    @Test
    void the_contrasts_of_an_answer_show_odds_ratios_words_and_how_many_particles() {
        Interpretation answer = Invented.answer(Invented.AG_CU, List.of(Invented.copperContrast()),
            Invented.copperRichPatches().build(), Invented.matrix().build());
        Picture picture = Picture.of(ContrastFigure.of("Sample A7: groups against each other", "24 spots.",
            ContrastPair.of(answer), 1.25).svg()).isProper();
        assertThat(picture.allText()).contains("dark patch against matrix", "n = 4 particles, paired",
            "3.1 (2.2 to 4.4)",
            "0.32 (0.23 to 0.45)", "higher", "lower", "odds ratio, first / second (no unit, log)",
            "at%, first | second",
            "margin: odds within a factor of 1.25");
        assertThat(Picture.middle(picture.drawn("polygon", "f-more").get(0)))
            .isCloseTo(picture.onLogAxis(3.12, "1", "2"), within(0.1));
        assertThat(picture.drawn("rect", "f-band").get(0)).satisfies(band ->
            assertThat(Picture.number(band, "x")).isCloseTo(picture.onLogAxis(0.8, "1", "2"), within(0.1)));
    }

    @Test
    void two_samples_are_compared_feature_by_feature_and_one_that_is_gone_is_named() {
        List<ContrastPair> pairs = List.of(
            new ContrastPair("dark patch", "n = 4 and 5 particles", List.of(Invented.contrasted("Cu", Word.EQUIVALENT,
                new Estimate(1.02, 0.9, 1.15), new Estimate(0.005, -0.02, 0.03), 0.8))),
            new ContrastPair("rim <b>", "gone: 6 spots before, none after", List.of()));
        Picture picture = Picture.of(ContrastFigure.of("As made (A7) against treated (A8)", "", pairs, 1.25).svg())
            .isProper();
        assertThat(picture.allText()).contains("equivalent", "rim <b>", "gone: 6 spots before, none after",
            "n = 4 and 5 particles");
    }

    @Test
    void a_comparison_of_samples_names_both_and_what_came_and_went() {
        ComparisonAnswer answer = new SampleComparison().compare(compared("as made", "matrix", 60, "rim", 40),
            compared("etched", "matrix", 45, "speck", 80), GroupBy.FEATURE, false, 0.003);
        Picture picture = Picture.of(ContrastFigure.of(answer).svg()).isProper();
        assertThat(picture.title()).isEqualTo("as made against etched");
        assertThat(picture.allText()).contains("First: as made, 12 spots on 3 particles", "Second: etched, ", "matrix",
            "n = 3 and 3 particles, not paired", "rim", "gone: n = 6 spots in the first, none in the second", "speck",
            "appeared: none in the first, n = 6 spots in the second");
        assertThat(picture.drawn("polygon", "f-more")).as("silver is higher in the first").isNotEmpty();
    }

    /** Three particles, two spots of either feature on each, around these at% of silver. */
    private static ComparedSample compared(String name, String first, double silver, String second, double other) {
        Nominal nominal = NominalText.parse("Ag:60.1,Cu:39.9", Basis.ATOMIC);
        List<Spot> spots = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            double shift = new double[] {-0.4, 0.1, 0.3, -0.2, 0.5, 0}[i];
            spots.add(spot(spots.size(), first, "P" + i / 2, silver + shift));
            spots.add(spot(spots.size(), second, "P" + i / 2, other + shift));
        }
        Sample sample = Sample.of(Optional.empty(), Optional.of(nominal));
        return new ComparedSample(name, sample, nominal, List.of(), SpotSource.of(spots));
    }

    private static Spot spot(int number, String feature, String particle, double silver) {
        Conditions conditions = new Conditions(OptionalDouble.of(15), OptionalDouble.empty(), OptionalDouble.empty(),
            OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty());
        return new Spot("spot " + number, Optional.of(particle), Optional.of(feature), Optional.empty(),
            Optional.empty(), conditions, Optional.empty(), Basis.ATOMIC,
            Map.of(Element.of("Ag"), measured(silver), Element.of("Cu"), measured(100 - silver)));
    }

    private static ReportedValue measured(double percent) {
        return ReportedValue.Measured.of(percent / 100, String.format(Locale.ROOT, "%.1f", percent));
    }

    @Test
    void unpaired_groups_tell_the_particles_of_each() {
        Interpretation paired = Invented.answer(Invented.AG_CU, List.of(Invented.copperContrast()),
            Invented.copperRichPatches().build(), Invented.matrix().build());
        Contrast contrast = paired.contrasts().get(0);
        Contrast unpaired = new Contrast("dark patch", "matrix", false, List.of(), List.of(), Scope.THESE_PARTICLES, 0,
            contrast.note(), contrast.elements());
        Interpretation separate = Invented.answer(Invented.AG_CU, List.of(unpaired),
            Invented.copperRichPatches().build(), Invented.matrix().build());
        assertThat(ContrastPair.of(separate).get(0).counts())
            .isEqualTo("n = 4 and 4 particles, not paired: speaks of these only");
    }
}
