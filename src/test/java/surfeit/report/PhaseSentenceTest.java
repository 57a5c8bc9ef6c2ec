package surfeit.report;

import static org.assertj.core.api.Assertions.assertThat;
import static surfeit.report.OutcomeBuilder.enriched;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import surfeit.composition.Phase;
import surfeit.composition.SourceRead;
import surfeit.element.Element;
import surfeit.segregation.answer.DiffractionMismatch;
import surfeit.segregation.answer.PhaseReading;

/** Words for phases; readings put together by hand, every number invented. */
class PhaseSentenceTest {
    private static final Phase SILVER = phase("(Ag)", "Ag");
    private static final Phase COPPER = phase("(Cu)", "Cu");
    private static final Phase TIN = phase("(Sn)", "Sn");

    private static Phase phase(String name, String element) {
        return new Phase(element, name, Map.of(Element.of(element), 1.0), OptionalDouble.empty(), "",
            OptionalDouble.empty(),
            "invented", SourceRead.NO);
    }

    private static String sentence(PhaseReading reading) {
        return Invented.sentence(Invented.AG_CU, new GroupBuilder("patch", 6, "P1", "P2", "P3")
            .element("Cu", 0.399, enriched(0.8, 0.01).factor(2, 1.9, 2.1).p(0.01)).phases(reading));
    }

    private static PhaseReading reading(PhaseReading.Kind kind, boolean copperFits, PhaseReading.MassShare... three) {
        return reading(kind, copperFits, List.of(), three);
    }

    private static PhaseReading reading(PhaseReading.Kind kind, boolean copperFits, List<Element> heldByNone,
                                        PhaseReading.MassShare... three) {
        return new PhaseReading(kind, List.of(new PhaseReading.Fit(SILVER, false, OptionalDouble.of(0.001)),
            new PhaseReading.Fit(COPPER, copperFits, OptionalDouble.of(0.4))), Optional.empty(), List.of(three), heldByNone,
            Optional.of(new PhaseReading.AtLeast(Element.of("Cu"), 0.9379)), "detail");
    }

    @Test
    void a_bound_stands_in_place_of_pure_and_is_rounded_down() {
        assertThat(sentence(reading(PhaseReading.Kind.ONE_PHASE, true)))
            .contains("Fits (Cu) and no other known phase; a spot smaller than the phases measures one phase, not the "
                + "alloy. At least 93.7 at% Cu.");
    }

    @Test
    void a_mixture_of_three_is_told_as_a_possibility() {
        assertThat(sentence(reading(PhaseReading.Kind.MIXTURE, false, new PhaseReading.MassShare(SILVER, 0.2),
            new PhaseReading.MassShare(COPPER, 0.3), new PhaseReading.MassShare(TIN, 0.5))))
            .contains("Could be a mixture of (Ag), (Cu) and (Sn).");
    }

    @Test
    void what_fits_nothing_is_said_and_what_cannot_be_told_is_left_to_the_details() {
        assertThat(sentence(reading(PhaseReading.Kind.NEITHER, false))).contains("Fits no known phase.");
        assertThat(sentence(reading(PhaseReading.Kind.NEITHER, false, List.of(Element.of("Zn"), Element.of("Ni")))))
            .contains("Fits no known phase; none of them holds Zn or Ni.");
        assertThat(sentence(reading(PhaseReading.Kind.CANNOT_TELL, true))).doesNotContain("phase", "Cu)");
    }

    @Test
    void a_phase_without_a_counterpart_has_its_reasons_behind_it() {
        assertThat(PhaseSentence.of(new DiffractionMismatch("(Cu)", DiffractionMismatch.Kind.SPOTS_ONLY,
            List.of("patch", "rim"), List.of("amorphous", "too little of it"))))
            .isEqualTo("(Cu): spots show it (patch and rim), diffraction does not. Possible reasons: amorphous; too "
                + "little of it.");
        assertThat(PhaseSentence.source(COPPER)).isEqualTo("(Cu) of Cu: invented (read in the source: no).");
    }
}
