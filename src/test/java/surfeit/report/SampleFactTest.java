package surfeit.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import surfeit.element.Element;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Coating;
import surfeit.spot.Form;
import surfeit.spot.Judgement;
import surfeit.spot.PreparationStep;
import surfeit.spot.Sample;

class SampleFactTest {

    @Test
    void everything_the_lab_stated_is_told_with_its_unit() {
        Sample sample = new Sample(Optional.of("ag-cu-eutectic"), Optional.empty(), Set.of(), AccuracyClass.STANDARDLESS,
            Form.POLISHED, new Sample.Geometry(OptionalDouble.of(15), OptionalDouble.of(35), OptionalDouble.of(130),
            OptionalDouble.of(30)), Optional.of(new Coating(Element.of("C"), OptionalDouble.of(10))),
            Optional.of("carbon tape"), Judgement.DEFAULT, List.of(new PreparationStep("gas atomised", Optional.empty()),
            new PreparationStep("polished", Optional.of("colloidal silica"))), List.of("(Ag)", "(Cu)"), "lot 7, invented",
            false);
        assertThat(SampleFact.of(sample)).extracting(fact -> fact.name() + ": " + fact.value()).containsExactly(
            "description: lot 7, invented", "surface taken as: polished", "particle diameter: 30 \u00b5m", "beam: 15 keV",
            "take-off angle: 35\u00b0", "detector resolution: 130 eV", "coating: C, 10 nm", "mount: carbon tape",
            "preparation: gas atomised, polished (colloidal silica)", "phases by diffraction: (Ag) and (Cu)");
        assertThat(SampleFact.of(sample)).filteredOn(SampleFact::ofLab).extracting(SampleFact::name)
            .containsExactly("description", "mount", "preparation", "phases by diffraction");
    }

    @Test
    void what_was_not_stated_is_not_told() {
        assertThat(SampleFact.of(Sample.of(Optional.of("ag-cu-eutectic"), Optional.empty())))
            .containsExactly(new SampleFact("surface taken as", "particle", false));
    }
}
