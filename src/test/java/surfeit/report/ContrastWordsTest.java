package surfeit.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import surfeit.element.Element;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.Contrast.ElementContrast;
import surfeit.segregation.answer.Contrast.Word;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Scope;

class ContrastWordsTest {
    private static final Estimate SIZE = new Estimate(1.2, 0.8, 1.8);
    private static final Estimate SHIFT = new Estimate(0.02, -0.01, 0.05);

    @Test
    void a_paired_contrast_of_a_binary_is_said_once_of_the_minor_element() {
        assertThat(words(Invented.copperContrast())).isEqualTo(
            "dark patch against matrix: Cu higher, odds x3.1 (2.2 to 4.4), Ag lower with it, on the same 4 particles. "
            + "If nothing differed, a result this strong would appear in at most 1 in 500 samples.");
    }

    @Test
    void particles_left_out_of_the_pairs_are_named() {
        Contrast all = Invented.copperContrast();
        Contrast some = new Contrast(all.groupA(), all.groupB(), true, List.of("P1", "P2", "P3"), List.of("P4", "P5"),
            all.scope(), 0.9, Optional.empty(), all.elements());
        assertThat(words(some)).contains("on the same 3 particles, P4 and P5 left out for having only one of the two. "
            + "If nothing");
    }

    @Test
    void separate_sets_and_an_inconclusive_difference_say_so() {
        Contrast contrast = unpaired(Scope.THESE_PARTICLES,
            unflagged("Ag", Word.INCONCLUSIVE, Optional.of(Reason.SCATTER)),
            unflagged("Cu", Word.INCONCLUSIVE, Optional.of(Reason.SCATTER)));
        assertThat(words(contrast)).isEqualTo(
            "rim against core: Cu inconclusive, odds x1.20 (0.80 to 1.80), compared as separate sets of particles, "
            + "for these particles only. The scatter is too large to tell.");
    }

    @Test
    void equivalent_names_the_margin() {
        Contrast contrast = unpaired(Scope.PARTICLES, unflagged("Ag", Word.EQUIVALENT, Optional.empty()),
            unflagged("Cu", Word.EQUIVALENT, Optional.empty()));
        assertThat(words(contrast)).isEqualTo(
            "rim against core: Cu equivalent (shown to lie within a factor (odds) of 1.25), odds x1.20 (0.80 to "
            + "1.80), compared as separate sets of particles.");
    }

    @Test
    void where_no_odds_exist_the_difference_is_told() {
        ElementContrast linear = new ElementContrast(Element.of("Cu"), Word.HIGHER, 0.02, -0.001, Optional.empty(),
            new Estimate(0.021, 0.01, 0.032), OptionalDouble.of(0.01), OptionalDouble.of(0.01), OptionalDouble.empty(),
            OptionalDouble.of(0.99), 0.1, 0, OptionalDouble.of(4), Optional.empty(), "linear");
        ElementContrast silver = flagged("Ag", Word.LOWER);
        assertThat(words(unpaired(Scope.PARTICLES, silver, linear))).startsWith(
            "rim against core: Cu higher, difference 2.1 at% (1.0 to 3.2), Ag lower with it, compared as separate "
            + "sets of particles.");
    }

    @Test
    void many_elements_are_listed() {
        Contrast contrast = unpaired(Scope.PARTICLES, flagged("Ag", Word.LOWER), flagged("Cu", Word.HIGHER),
            unflagged("Zn", Word.INCONCLUSIVE, Optional.of(Reason.CALIBRATION)));
        assertThat(words(contrast)).isEqualTo(
            "rim against core: Ag lower, odds x1.20 (0.80 to 1.80); Cu higher, odds x1.20 (0.80 to 1.80); Zn "
            + "inconclusive, odds x1.20 (0.80 to 1.80); compared as separate sets of particles. If nothing differed, "
            + "even the weakest of these would appear in at most 1 in 50 samples. Zn: the spots agree, but the "
            + "calibration error that is left could make the difference.");
    }

    @Test
    void near_zero_an_element_is_not_said_to_differ_by_about_the_margin() {
        ElementContrast scarce = new ElementContrast(Element.of("Si"), Word.INCONCLUSIVE, 0.021, 0.0214,
            Optional.of(new Estimate(0.98, 0.88, 1.09)), SHIFT, OptionalDouble.of(0.6), OptionalDouble.of(1),
            OptionalDouble.of(1), OptionalDouble.empty(), 0.04, 0.02, OptionalDouble.of(3), Optional.of(Reason.BETWEEN), "hull");
        Contrast contrast = unpaired(Scope.PARTICLES, flagged("Fe", Word.LOWER), flagged("Cr", Word.HIGHER), scarce);
        assertThat(words(contrast)).endsWith("Si: no difference is shown; with an error this large beside its share an element "
            + "is not called equivalent.").doesNotContain("near the margin");
    }

    @Test
    void elements_shown_equivalent_are_told_together_and_a_note_comes_last() {
        Contrast plain = unpaired(Scope.PARTICLES, unflagged("Al", Word.EQUIVALENT, Optional.empty()),
            unflagged("Si", Word.EQUIVALENT, Optional.empty()), flagged("Mg", Word.HIGHER));
        Contrast noted = new Contrast("rim", "core", false, List.of(), List.of(), Scope.PARTICLES, 0,
            Optional.of("Different sessions: the calibration error does not cancel"), plain.elements());
        assertThat(words(noted)).isEqualTo(
            "rim against core: Mg higher, odds x1.20 (0.80 to 1.80); Al and Si equivalent (shown to lie within a "
            + "factor (odds) of 1.25); compared as separate sets of particles. If nothing differed, a result this "
            + "strong would appear in at most 1 in 50 samples. Different sessions: the calibration error does not "
            + "cancel.");
    }

    private static Contrast unpaired(Scope scope, ElementContrast... elements) {
        return new Contrast("rim", "core", false, List.of(), List.of(), scope, 0.9, Optional.empty(),
            List.of(elements));
    }

    private static ElementContrast flagged(String symbol, Word word) {
        return Invented.contrasted(symbol, word, SIZE, SHIFT, 0.02);
    }

    private static ElementContrast unflagged(String symbol, Word word, Optional<Reason> reason) {
        return new ElementContrast(Element.of(symbol), word, 0.5, 0.5, Optional.of(SIZE), SHIFT, OptionalDouble.of(0.3),
            OptionalDouble.of(0.3), OptionalDouble.empty(), OptionalDouble.empty(), 0.1, 0.1, OptionalDouble.of(3),
            reason, "logit");
    }

    private static String words(Contrast contrast) {
        return new PlainWords(Invented.answer(Invented.AG_CU, List.of(contrast)), Signs.ASCII).contrasts().get(0);
    }
}
