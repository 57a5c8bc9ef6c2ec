package surfeit.rival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.composition.Alloy;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalFractions;
import surfeit.composition.NominalText;
import surfeit.element.Element;
import surfeit.element.ElementTable;
import surfeit.element.ReferenceTable;
import surfeit.preparation.Handling;
import surfeit.rival.Rival.CouldExplain;
import surfeit.spot.Form;
import surfeit.spot.Sample;

class RivalsTest {
    private final Rivals rivals = new Rivals();

    static List<Alloy> alloys() {
        return List.copyOf(AlloyCatalogue.packaged().all());
    }

    @ParameterizedTest
    @MethodSource("alloys")
    void every_alloy_of_the_catalogue_can_be_asked_at_every_beam_energy(Alloy alloy) {
        for (double kev : new double[] {0.5, 1, 3, 5, 10, 15, 20, 30, 40, 200}) {
            assertThatCode(() -> assertThat(rivals.of(shifted(alloy.nominal(), OptionalDouble.of(kev)))).isNotEmpty())
                .as(alloy.id() + " at " + kev + " keV").doesNotThrowAnyException();
        }
        assertThat(rivals.of(shifted(alloy.nominal(), OptionalDouble.empty())))
            .allSatisfy(rival -> assertThat(rival.largestFactor().orElse(1)).isPositive())
            .anySatisfy(rival -> assertThat(rival.code()).isEqualTo(Cause.BEAM_ENERGY));
    }

    @Test
    void every_element_can_be_half_of_an_alloy() {
        Element copper = Element.of("Cu");
        for (Element element : ElementTable.standard().all()) {
            if (!element.equals(copper)) {
                Nominal nominal = NominalText.parse(element + ":50,Cu:50", Basis.ATOMIC);
                assertThatCode(() -> rivals.of(shifted(nominal, OptionalDouble.of(15)))).as(element.symbol())
                    .doesNotThrowAnyException();
            }
        }
    }

    @Test
    void an_element_without_any_x_ray_line_cannot_have_been_measured() {
        assertThat(rivals.of(shifted(NominalText.parse("Al:90,Li:10", Basis.ATOMIC), OptionalDouble.of(15))).get(0))
            .satisfies(rival -> assertThat(rival.code()).isEqualTo(Cause.LINE_EXCITATION))
            .satisfies(rival -> assertThat(rival.couldExplain()).isEqualTo(CouldExplain.YES))
            .satisfies(rival -> assertThat(rival.largestFactor()).isEmpty());
    }

    @Test
    void what_was_not_stated_is_asked_for_and_explains_in_part_at_most() {
        List<Rival> open = rivals.of(shifted(NominalText.parse("Al:87.8,Si:12.2", Basis.ATOMIC),
            OptionalDouble.empty()));
        assertThat(open).isNotEmpty().allSatisfy(rival -> assertThat(rival.couldExplain())
            .isNotEqualTo(CouldExplain.YES));
        assertThat(open).filteredOn(rival -> rival.code() == Cause.TILT).isNotEmpty()
            .allSatisfy(rival -> assertThat(rival.needs()).contains("position", "tilt_deg", "beam_energy_kev"));
        assertThat(open).filteredOn(rival -> rival.code() == Cause.RESIDUE)
            .allSatisfy(rival -> assertThat(rival.needs()).anyMatch(field -> field.startsWith("elements.")));
        assertThat(open).filteredOn(rival -> rival.code() == Cause.SMALL_PATCH).isNotEmpty()
            .allSatisfy(rival -> assertThat(rival.needs()).containsExactly("feature_size_um"))
            .allSatisfy(rival -> assertThat(rival.howToRuleOut()).startsWith("Measure larger features of the kind,"));
    }

    /** Reed's rule, from memory: 0.077 (15^1.5 - 1.84^1.5) / 2.7 = 1.59 um in Al-Si; times 0.95 and two, 3.0 um. */
    @Test
    void of_an_unstated_size_the_way_out_says_how_wide_is_wide_enough() {
        assertThat(rivals.of(shifted(NominalText.parse("Al:87.8,Si:12.2", Basis.ATOMIC), OptionalDouble.of(15))))
            .filteredOn(rival -> rival.code() == Cause.SMALL_PATCH).singleElement().satisfies(rival -> {
                String way = rival.howToRuleOut();
                assertThat(way).matches("Measure features of the kind clearly wider than [0-9.]+ \u00b5m, .*");
                assertThat(Double.parseDouble(way.replaceAll(".*than ([0-9.]+) .*", "$1"))).isCloseTo(3.0, within(0.15));
            });
    }

    @Test
    void nothing_is_asked_where_nothing_shifted() {
        Situation shifted = shifted(NominalText.parse("Ag:60,Cu:40", Basis.ATOMIC), OptionalDouble.of(15));
        assertThat(rivals.of(new Situation(shifted.group(), true, shifted.elements(), shifted.nominal(), shifted.mean(),
            List.of(),
            shifted.beamEnergyKev(), 3, shifted.evidence(), List.of(), Map.of(), shifted.sample(), Handling.NONE,
            Basis.ATOMIC)))
            .isEmpty();
    }

    @Test
    void the_same_alloy_and_beam_are_worked_out_once_and_no_more_than_a_bounded_number_is_kept() {
        Rivals own = new Rivals();
        for (int i = 0; i < 300; i++) {
            Nominal nominal = NominalText.parse("Ag:" + (50 + i / 10.0) + ",Cu:bal", Basis.ATOMIC);
            own.of(shifted(nominal, OptionalDouble.of(15)));
            own.of(shifted(nominal, OptionalDouble.of(15)));
        }
        assertThat(own.alloysHeld()).isBetween(64, 128);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Ag:60,Cu:40", "Fe:70,Cr:18,Mn:2,Ni:10"})
    void asked_twice_the_answer_is_the_same_and_strongest_first(String nominal) {
        Situation situation = shifted(NominalText.parse(nominal, Basis.ATOMIC), OptionalDouble.of(15));
        List<Rival> first = rivals.of(situation);
        assertThat(rivals.of(situation)).isEqualTo(first);
        assertThat(first).extracting(rival -> -rival.couldExplain().ordinal()).isSorted();
        assertThat(first).allSatisfy(rival -> {
            assertThat(rival.cause()).isNotBlank();
            assertThat(rival.assumes()).isNotBlank();
            assertThat(rival.howToRuleOut()).isNotBlank();
            assertThat(rival.source()).isNotBlank();
        });
    }

    @Test
    void every_code_stands_in_the_shared_vocabulary() {
        assertThat(ReferenceTable.vocabulary("causes.csv").rows()).extracting(row -> row.get("code"))
            .containsExactlyElementsOf(Arrays.stream(Cause.values()).map(Cause::code).toList());
    }

    /** The alloy with every element off its nominal by a factor, on an undescribed particle. */
    private static Situation shifted(Nominal nominal, OptionalDouble beamEnergyKev) {
        NominalFractions fractions = nominal.resolve();
        double[] middles = fractions.middles();
        List<Shift> shifts = new ArrayList<>();
        for (int i = 0; i < middles.length; i++) {
            if (middles[i] > 0 && middles[i] < 1) {
                shifts.add(new Shift(i, fractions.elements().get(i), i % 2 == 0 ? 1 : -1, middles[i], 0.15, 0.02, 0.17,
                    Optional.empty(),
                    Optional.empty()));
            }
        }
        Evidence evidence = new Evidence(List.of(new Stance(Optional.empty(), Optional.empty(), Form.PARTICLE, 6)),
            OptionalDouble.empty(), new Evidence.Totals(0.99, 1.01, false), Map.of(), Map.of(), Set.of(Basis.ATOMIC),
            Set.of(),
            Set.of(), false);
        return new Situation("dark patch", true, fractions.elements(), middles, middles, shifts, beamEnergyKev, 3,
            evidence, List.of(),
            Map.of(), Sample.of(Optional.empty(), Optional.of(nominal)), Handling.NONE, Basis.ATOMIC);
    }
}
