package surfeit.report;

import static org.assertj.core.api.Assertions.assertThat;
import static surfeit.report.FindingBuilder.finding;
import static surfeit.report.OutcomeBuilder.enriched;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import surfeit.composition.Nominal;
import surfeit.segregation.answer.Interpretation;

class MethodsTextTest {

    @Test
    void the_paragraph_tells_beam_normalisation_accuracy_and_statistics() {
        assertThat(MethodsText.of(Invented.answer(Invented.AG_CU, Invented.copperRichPatches().build()),
            Map.of("Ag", "La"))).isEqualTo(
            "Compositions were measured by energy-dispersive X-ray spectrometry (EDS; ISO 22309) in spot mode at 15 "
            + "keV: 24 spots on 4 particles in 1 session. Lines used: Ag La. Other lines were not stated; at 15 keV "
            + "they are usually Cu Ka. Mass fractions were converted to atomic fractions with the atomic weights of "
            + "2021 (Prohaska et al. 2022), and results normalised to 100 at% over the nominal elements Ag and Cu; all "
            + "other elements were left out before normalising. Spots were averaged "
            + "within each particle (means) and particles, unweighted, "
            + "within each group, so that the particle is the unit that repeats. The random uncertainty of a group is "
            + "the standard error of its particle means (k - 1 degrees of freedom). The calibration error shared by "
            + "all spots was taken as 12.5 % relative standard uncertainty per element (standardless analysis; "
            + "Newbury and Ritchie 2013) with a floor of 0.1 mass %, independent between elements, propagated through "
            + "the normalisation (JCGM 100:2008); it does not shrink with the number of spots. Group means were "
            + "compared with nominal on the log-odds scale (Aitchison 1986), near the ends of the scale on the linear "
            + "scale too, whichever was less favourable. Both uncertainties were combined with effective degrees of "
            + "freedom (Welch 1947; Satterthwaite 1946); the 95 % interval is never narrower than that of the scatter "
            + "alone. P values were adjusted over all elements and groups (Holm 1979) at a family-wise level of 0.05; "
            + "the two elements of a binary count as one test. \"Consistent\" was stated only where two one-sided "
            + "tests (Schuirmann 1987) place the mean within an odds ratio of 1.25 of nominal; everything else is "
            + "\"inconclusive\".");
    }

    @Test
    void lines_nobody_stated_are_told_as_the_usual_ones() {
        Interpretation answer = Invented.answer(Invented.AG_CU, Invented.copperRichPatches().build());
        assertThat(MethodsText.of(answer, Map.of())).doesNotContain("Lines used")
            .contains("The lines were not stated; at 15 keV they are usually Ag La and Cu Ka.");
        assertThat(MethodsText.of(answer, Map.of("Ag", "La", "Cu", "Ka"))).contains("Lines used: ")
            .doesNotContain("not stated");
    }

    @Test
    void what_was_not_done_is_not_told() {
        String plain = MethodsText.of(Invented.answer(Invented.AG_CU, Invented.copperRichPatches().build()), Map.of());
        assertThat(plain).doesNotContain("Lines used", "one particle", "two particles", "detection limit",
            "reference spots", "each other");
    }

    @Test
    void scopes_limits_contrasts_and_excluded_elements_add_their_sentences() {
        Nominal nominal = Invented.atomic("Ag", 60, "Cu", 39, "O", 1);
        Interpretation full = Invented.answer(nominal, List.of(Invented.copperContrast()),
            new GroupBuilder("dark patch", 4, "P1", "P2")
                .element(finding("Cu", 0.399, enriched(0.8, 0.01).p(0.01)).belowLimit(1, 0.003, true)).build(),
            new GroupBuilder("rim", 3, "P1").build());
        Interpretation excluded = new Interpretation(full.nominal(),
            full.nominalFractions().without(Set.of(nominal.elements().get(2))),
            full.spotCount(), full.particleCount(), full.sessionCount(), full.settings(), full.groups(),
            full.contrasts(), full.caveats(), full.cautions(), full.depths(), full.diffraction());
        assertThat(MethodsText.of(excluded, Map.of()))
            .contains("over the nominal elements Ag and Cu; all other elements (and O) were left out before "
            + "normalising.")
            .contains("With two particles it is the larger of")
            .contains("With one particle it is the scatter of the spots")
            .contains("Values below a detection limit (Currie 1968) were evaluated twice")
            .contains("taken as 0.3 mass %.")
            .contains("Groups were compared with each other particle by particle");
    }

    @Test
    void every_citation_has_its_entry_and_only_cited_ones_are_listed() {
        String methods = MethodsText.of(Invented.answer(Invented.AG_CU, Invented.copperRichPatches().build()),
            Map.of());
        assertThat(Reference.citedIn(methods)).containsExactly(Reference.AITCHISON, Reference.HOLM,
            Reference.ISO_22309, Reference.GUM, Reference.NEWBURY_RITCHIE, Reference.PROHASKA, Reference.SATTERTHWAITE,
            Reference.SCHUIRMANN, Reference.WELCH);
        assertThat(Reference.values()).allSatisfy(reference ->
            assertThat(reference.text()).containsAnyOf("from memory", "read"));
    }
}
