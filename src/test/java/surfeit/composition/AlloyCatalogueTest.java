package surfeit.composition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.element.Element;

class AlloyCatalogueTest {
    private static final AlloyCatalogue CATALOGUE = AlloyCatalogue.packaged();

    @Test
    void every_packaged_alloy_has_a_comparable_nominal_and_a_source() {
        assertThat(CATALOGUE.all()).hasSize(38).allSatisfy(alloy -> {
            NominalFractions fractions = alloy.nominal().resolve();
            assertThat(fractions.requireComparable()).isSameAs(fractions);
            assertThat(alloy.source()).isNotBlank();
            assertThat(alloy.temperature()).isPresent();
        });
        assertThat(CATALOGUE.all()).extracting(Alloy::id).doesNotHaveDuplicates();
    }

    /** NIST solder phase diagrams, calculated invariant of Ag-Cu: 28.41 wt% copper at 779.1 °C. */
    @Test
    void an_alloy_carries_its_handbook_facts() {
        Alloy alloy = CATALOGUE.require("ag-cu-eutectic");
        assertThat(alloy.name()).isEqualTo("Ag-Cu eutectic");
        assertThat(alloy.nominal().basis()).isEqualTo(Basis.MASS);
        assertThat(alloy.nominal()).isEqualTo(NominalText.parse("Ag:71.59,Cu:28.41", Basis.MASS));
        assertThat(alloy.temperature()).contains(new StatedTemperature("779.1", "eutectic"));
        assertThat(alloy.sourceRead()).isEqualTo(SourceRead.YES);
        assertThat(alloy.source()).contains("NIST");
        assertThat(alloy.phases()).extracting(Phase::name).containsExactly("(Ag)", "(Cu)");
    }

    @Test
    void figures_from_memory_are_marked_so() {
        assertThat(CATALOGUE.require("bi58sn42").sourceRead()).isEqualTo(SourceRead.NO);
        assertThat(CATALOGUE.require("au-ge-eutectic").sourceRead()).isEqualTo(SourceRead.PART);
    }

    @ParameterizedTest
    @CsvSource({"sac305,217-220", "ga68.5in21.5sn10,-19", "bi-pb-eutectic,124-125.5", "sn-pb-eutectic,182.2"})
    void melting_is_stated_as_a_value_or_a_range(String id, String celsius) {
        assertThat(CATALOGUE.require(id).temperature().orElseThrow().celsius()).isEqualTo(celsius);
    }

    @Test
    void phases_are_those_of_the_binary_whatever_the_order_of_its_elements() {
        assertThat(CATALOGUE.require("sn-pb-eutectic").phases()).extracting(Phase::system, Phase::name).containsExactly(
            tuple("Pb-Sn", "(Pb)"), tuple("Pb-Sn", "(Sn)"));
    }

    @Test
    void a_ternary_gets_the_phases_of_the_subsystems_of_its_main_element_marked_as_theirs() {
        assertThat(CATALOGUE.require("sac305").phases()).extracting(Phase::system).containsOnly("Ag-Sn", "Cu-Sn");
        assertThat(CATALOGUE.require("fields-metal").phases()).extracting(Phase::system).containsOnly("In-Sn", "Bi-In");
    }

    @Test
    void the_main_element_is_the_one_there_is_most_of_wherever_it_stands() {
        assertThat(CATALOGUE.phasesOf(NominalText.parse("Ag:3,Sn:96.5,Cu:0.5", Basis.MASS)))
            .extracting(Phase::system).containsOnly("Ag-Sn", "Cu-Sn");
    }

    @Test
    void an_element_that_may_be_absent_brings_no_phases() {
        assertThat(CATALOGUE.require("alloy-718").phases()).isEmpty();
        assertThat(CATALOGUE.phasesOf(NominalText.parse("Al:bal,Si:0-0.5", Basis.MASS))).isEmpty();
        assertThat(CATALOGUE.phasesOf(NominalText.parse("Al:bal,Si:0.1-0.5", Basis.MASS)))
            .extracting(Phase::name).containsExactly("(Al)", "(Si)");
    }

    /** Bi-Sn: 12.4 at% bismuth in tin at 140 °C; Al2Cu phase: 53.5 wt% copper, from memory. */
    @Test
    void phases_are_kept_in_atomic_fractions_whatever_their_table_says() {
        Phase tin = phase("bi-sn-eutectic", "(Sn)");
        assertThat(tin.atomicFractions().get(Element.of("Bi"))).isCloseTo(0.124, within(1e-12));
        assertThat(tin.densityGPerCm3()).hasValue(7.6);
        assertThat(tin.temperatureCelsius()).hasValue(140);
        Phase theta = phase("al-cu-eutectic", "theta Al2Cu");
        assertThat(theta.atomicFractions().get(Element.of("Cu")))
            .isCloseTo(53.5 / 63.546 / (53.5 / 63.546 + 46.5 / 26.9815384), within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"ag-cu-eutetic,ag-cu-eutectic", "AG-CU-EUTECTIC,ag-cu-eutectic", "cu-ag-eutectic,ag-cu-eutectic",
        "ag_cu eutectic,ag-cu-eutectic", "SAC 305,sac305", "Cartridge brass,cartridge-brass",
        "Wood's metal,woods-metal"})
    void an_unknown_id_suggests_the_nearest(String id, String nearest) {
        assertThat(CATALOGUE.nearest(id)).first().isEqualTo(nearest);
        assertThat(CATALOGUE.nearest(id)).hasSizeLessThanOrEqualTo(3).doesNotHaveDuplicates();
    }

    @Test
    void an_unknown_alloy_is_refused_with_what_was_expected_and_found() {
        assertThatThrownBy(() -> CATALOGUE.require("sac306"))
            .isInstanceOfSatisfying(UnknownAlloyException.class, e -> {
                assertThat(e.id()).isEqualTo("sac306");
                assertThat(e.nearest()).contains("sac305");
            })
            .hasMessage("Expected the id of an alloy such as ag-cu-eutectic, got \"sac306\"; nearest known: sac305.");
        assertThatThrownBy(() -> CATALOGUE.require("stainless steel of unknown make"))
            .hasMessage("Expected the id of an alloy such as ag-cu-eutectic, got \"stainless steel of unknown make\".");
    }

    @Test
    void a_labs_own_alloy_with_its_own_phases_is_found_like_the_packaged_ones() {
        Phase own = Phase.of("Ag-Cu-Zn", "beta", NominalText.parse("Ag:30,Cu:30,Zn:40", Basis.ATOMIC),
            OptionalDouble.empty(), "invented", OptionalDouble.empty(), "invented for this test", SourceRead.NO);
        Alloy lot = new Alloy("lot-7", "Lot 7", NominalText.parse("Ag:50,Cu:30,Zn:20", Basis.MASS), Optional.empty(),
            "invented for this test", SourceRead.NO, List.of(own));

        AlloyCatalogue catalogue = CATALOGUE.with(List.of(lot));

        assertThat(catalogue.require("lot-7")).isEqualTo(lot);
        assertThat(catalogue.all()).hasSize(39).last().isEqualTo(lot);
        assertThat(catalogue.nearest("lot7")).containsExactly("lot-7");
        assertThat(CATALOGUE.byId("lot-7")).isEmpty();
    }

    @Test
    void a_labs_own_alloy_hides_a_packaged_one_of_the_same_id() {
        Alloy own = new Alloy("sac305", "SAC305 as bought", NominalText.parse("Sn:96.4,Ag:3.1,Cu:0.5", Basis.MASS),
            Optional.empty(), "invented certificate", SourceRead.YES, List.of());
        assertThat(CATALOGUE.with(List.of(own)).require("sac305")).isSameAs(own);
        assertThat(CATALOGUE.require("sac305").name()).isEqualTo("Sn-3.0Ag-0.5Cu solder");
    }

    private static Phase phase(String alloy, String name) {
        return CATALOGUE.require(alloy).phases().stream().filter(phase -> phase.name().equals(name)).findFirst()
            .orElseThrow();
    }
}
