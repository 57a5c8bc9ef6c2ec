package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import surfeit.composition.Alloy;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalPart;
import surfeit.element.Element;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Coating;
import surfeit.spot.Form;
import surfeit.spot.Judgement;
import surfeit.spot.PreparationStep;
import surfeit.spot.Sample;
import surfeit.spot.SpotCentre;

class SampleCodecTest {

    @Test
    void a_full_description_comes_back_as_it_was() {
        Sample sample = new Sample(Optional.of("ag-cu-eutectic"),
            Optional.of(new Nominal(Basis.MASS, Map.of(Element.of("Ag"), new NominalPart.Range(0.7, 0.73),
                Element.of("Cu"), new NominalPart.Balance()))),
            Set.of(Element.of("C"), Element.of("O")), AccuracyClass.STANDARDS_BASED, Form.POLISHED,
            new Sample.Geometry(OptionalDouble.of(15), OptionalDouble.of(35), OptionalDouble.of(130),
                OptionalDouble.of(30)),
            Optional.of(new Coating(Element.of("C"), OptionalDouble.of(10))), Optional.of("aluminium stub"),
            new Judgement(1.5, 0.01, 2, 0.8, SpotCentre.MEDIAN),
            List.of(new PreparationStep("polished", Optional.of("colloidal silica")),
                new PreparationStep("gas atomised", Optional.empty())),
            List.of("(Ag)"), "Los 7, Körnung 20–45 µm", true);

        assertThat(SampleCodec.decode(SampleCodec.encode(sample))).isEqualTo(sample);
    }

    @Test
    void a_bare_description_comes_back_as_it_was() {
        Sample sample = LabBench.agCuSample();

        assertThat(SampleCodec.decode(SampleCodec.encode(sample))).isEqualTo(sample);
    }

    @Test
    void every_alloy_comes_back_as_it_was_with_its_elements_in_order() {
        assertThat(AlloyCatalogue.packaged().all()).isNotEmpty().allSatisfy(alloy -> {
            Alloy back = AlloyCodec.decode(AlloyCodec.encode(alloy));
            assertThat(back).isEqualTo(alloy);
            assertThat(back.nominal().elements()).isEqualTo(alloy.nominal().elements());
        });
    }
}
