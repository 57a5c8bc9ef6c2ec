package surfeit.preparation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.element.Element;
import surfeit.spot.PreparationStep;

class CautionsTest {

    @ParameterizedTest
    @CsvSource({"etched, HF, calcium gluconate", "etched, aqua regia, acid into water",
        "geätzt, Salpetersäure, acid into water", "etched, nital, decompose violently",
        "etched, picric acid, explodes when dry", "etched, perchloric acid, wash-down",
        "melted, hot oil, flash point", "gas atomised, argon, can ignite", "gas atomised, argon, Molten metal",
        "cleaned in an ultrasonic bath, acetone, hearing", "cleaned, Aceton, Flammable",
        "etched, chromic acid, carcinogenic",
        "etched, KCN, Cyanides", "etched, Natronlauge, eye protection"})
    void a_hazardous_step_or_reagent_brings_its_note(String step, String reagent, String part) {
        List<String> notes = of(step, reagent);
        assertThat(notes).anySatisfy(note -> assertThat(note).contains(part));
        assertThat(notes).last().isEqualTo(Cautions.DEFERS);
    }

    @Test
    void elements_of_the_alloy_bring_theirs_by_name() {
        List<String> notes = Cautions.of(Handling.NONE,
            List.of(Element.of("Sn"), Element.of("Pb"), Element.of("Cd"), Element.of("Ga")));
        assertThat(notes).anySatisfy(note -> assertThat(note).startsWith("Ga, Cd, Pb: ").contains("toxic"));
        assertThat(notes).anySatisfy(note -> assertThat(note).startsWith("Ga: attacks aluminium"));
    }

    @Test
    void nothing_hazardous_brings_no_note_at_all() {
        assertThat(Cautions.of(Handling.of(Optional.of("carbon tape"), List.of(new PreparationStep("polished",
            Optional.of("diamond paste")))), List.of(Element.of("Ag"), Element.of("Cu")))).isEmpty();
    }

    @Test
    void each_note_is_said_once() {
        assertThat(of("molten, cast and remelted", "molten in silicone oil")).isNotEmpty().doesNotHaveDuplicates();
    }

    private static List<String> of(String step, String reagent) {
        return Cautions.of(Handling.of(Optional.empty(), List.of(new PreparationStep(step, Optional.of(reagent)))),
            List.of(Element.of("Ag"), Element.of("Cu")));
    }
}
