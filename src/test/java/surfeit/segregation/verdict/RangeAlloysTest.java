package surfeit.segregation.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static surfeit.spot.AccuracyClass.STANDARDLESS;
import static surfeit.spot.AccuracyClass.STANDARDS_BASED;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import surfeit.element.Element;
import surfeit.segregation.Answers;
import surfeit.segregation.InventedTable;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Verdict;
import surfeit.spot.AccuracyClass;

/**
 * Alloys whose nominal is a specification: ranges, "at most", a balance. The alloys are those of the packaged table
 * (its limits from memory); every spot is invented.
 */
class RangeAlloysTest {

    /** Steel powder within its specification; carbon is not looked at. */
    private static InventedTable steelInOrder() {
        return InventedTable.inMass("Fe Cr Ni Mo Mn Si C")
            .row("P1", "67.1 17.0 11.9 2.4 1.1 0.48 n.d.").row("P1", "67.5 16.8 11.8 2.4 1.0 0.50 n.d.")
            .row("P2", "67.0 17.2 12.0 2.5 1.2 0.44 n.d.").row("P2", "67.2 16.9 11.8 2.5 1.1 0.50 n.d.")
            .row("P3", "66.9 17.1 12.1 2.6 1.0 0.46 n.d.").row("P3", "67.3 16.7 12.1 2.4 1.1 0.50 n.d.");
    }

    /** The same powder with a scale rich in Cr, Mn and Si. */
    private static InventedTable steelWithScale() {
        return InventedTable.inMass("Fe Cr Ni Mo Mn Si O C")
            .row("P1", "30.1 30.0 3.9 1.40 9.1 2.48 20.1 3.1").row("P1", "31.1 31.0 3.9 1.41 9.4 2.68 19.1 3.1")
            .row("P2", "30.6 30.5 3.9 1.42 9.3 2.58 21.1 4.1").row("P2", "30.9 31.2 3.9 1.22 9.1 2.45 20.1 3.8")
            .row("P3", "30.4 30.9 4.1 1.33 9.9 2.78 18.1 3.4").row("P3", "31.6 30.2 3.8 1.30 9.0 2.30 22.1 3.5");
    }

    private static InventedTable titaniumWithAluminiumRichSkin() {
        return InventedTable.inMass("Ti Al V Fe O")
            .row("P1", "70.6 14.1 1.6 n.d. 13.9").row("P1", "70.1 14.6 1.4 n.d. 14.1")
            .row("P2", "71.6 13.1 1.5 n.d. 14.9").row("P2", "70.4 14.0 1.4 n.d. 14.1")
            .row("P3", "70.1 14.9 1.3 n.d. 13.9").row("P3", "70.4 14.4 1.2 n.d. 14.3")
            .row("P4", "70.4 14.2 1.2 n.d. 14.3");
    }

    private static InventedTable niobiumRichPhase() {
        return InventedTable.inMass("Ni Cr Fe Nb Mo Ti Al Co Si")
            .row("P1", "45.6 13.9 12.4 22.1 4.6 1.1 0.3 n.d. 0.4").row("P1", "45.1 14.2 12.7 21.6 4.9 1.2 0.3 n.d. 0.5")
            .row("P2", "46.2 14.4 12.9 20.1 4.8 1.0 0.3 n.d. 0.4").row("P2", "45.8 14.1 12.6 21.4 4.7 1.1 n.d. n.d. 0.4")
            .row("P3", "45.4 13.8 12.2 22.8 4.5 1.2 0.3 n.d. 0.6").row("P3", "45.9 14.0 12.5 21.9 4.6 1.1 n.d. n.d. 0.4");
    }

    @ParameterizedTest
    @EnumSource(AccuracyClass.class)
    void a_steel_within_its_specification_is_consistent_in_every_element_and_warns_of_nothing(AccuracyClass accuracy) {
        GroupFinding group = Answers.only(Answers.of("316l", accuracy, "C", steelInOrder()));
        assertThat(group.elements()).hasSize(6).allSatisfy(finding -> {
            assertThat(finding.outcome().verdict()).as(finding.element().symbol()).isEqualTo(Verdict.CONSISTENT);
            assertThat(finding.outcome().enrichmentFactor()).as("no factor inside a range").isEmpty();
            assertThat(finding.outcome().pValue()).hasValue(1);
        });
        assertThat(group.caveats()).noneMatch(caveat -> caveat.weight() == Caveat.Weight.WARNING);
        assertThat(group.notMeasured()).extracting(Element::symbol).containsExactly("P", "S", "N");
        assertThat(group.explanationSet()).as("not asked where nothing is flagged").isEmpty();
    }

    @Test
    void a_not_measured_element_is_never_depleted_and_is_said() {
        GroupFinding group = Answers.only(Answers.of("316l", STANDARDLESS, "C", steelInOrder()));
        assertThat(group.elements()).extracting(finding -> finding.element().symbol())
            .containsExactly("Fe", "Cr", "Ni", "Mo", "Mn", "Si");
        assertThat(group.caveats()).anySatisfy(caveat -> {
            assertThat(caveat.code()).isEqualTo("not-measured");
            assertThat(caveat.detail()).contains("P, S, N");
        });
    }

    /** Limits computed with numpy: element at its limit, the others at their middles scaled, O C N H then left out. */
    @Test
    void the_limits_are_atomic_fractions_and_the_balance_is_marked_derived() {
        GroupFinding group = Answers.only(Answers.of("ti-6al-4v", STANDARDS_BASED, "O N C H", titaniumWithAluminiumRichSkin()));
        double[][] limits = {{0.83884672, 0.87765442}, {0.09399083, 0.11428074}, {0.03151590, 0.04056228}, {0, 0.00328843}};
        for (int i = 0; i < limits.length; i++) {
            ElementFinding finding = group.elements().get(i);
            assertThat(finding.nominalLow()).as(finding.element().symbol()).isCloseTo(limits[i][0], within(2e-6));
            assertThat(finding.nominalHigh()).as(finding.element().symbol()).isCloseTo(limits[i][1], within(2e-6));
            assertThat(finding.nominalDerived()).isEqualTo(finding.element().symbol().equals("Ti"));
        }
    }

    @Test
    void outside_a_range_the_factor_counts_from_the_nearest_limit() {
        GroupFinding group = Answers.only(Answers.of("ti-6al-4v", STANDARDS_BASED, "O N C H", titaniumWithAluminiumRichSkin()));
        ElementFinding aluminium = Answers.element(group, "Al");
        assertThat(aluminium.outcome().verdict()).isEqualTo(Verdict.ENRICHED);
        assertThat(aluminium.outcome().enrichmentFactor().orElseThrow().value())
            .isCloseTo(aluminium.outcome().mean() / aluminium.nominalHigh(), within(1e-12));
        ElementFinding vanadium = Answers.element(group, "V");
        assertThat(vanadium.outcome().verdict()).isEqualTo(Verdict.DEPLETED);
        assertThat(vanadium.outcome().enrichmentFactor().orElseThrow().value())
            .isCloseTo(vanadium.outcome().mean() / vanadium.nominalLow(), within(1e-12));
        assertThat(vanadium.outcome().difference().value())
            .isCloseTo(vanadium.outcome().mean() - vanadium.nominalLow(), within(1e-12));
    }

    @Test
    void excluded_elements_are_neither_closed_over_nor_foreign() {
        GroupFinding group = Answers.only(Answers.of("ti-6al-4v", STANDARDS_BASED, "O N C H", titaniumWithAluminiumRichSkin()));
        assertThat(group.foreign()).isEmpty();
        assertThat(group.elements()).extracting(finding -> finding.element().symbol()).containsExactly("Ti", "Al", "V", "Fe");
    }

    @Test
    void a_scale_is_named_element_by_element_with_the_oxygen_beside_it() {
        GroupFinding group = Answers.only(Answers.of("316l", STANDARDLESS, "C", steelWithScale()));
        assertThat(Answers.verdict(group, "Cr")).isEqualTo(Verdict.ENRICHED);
        assertThat(Answers.verdict(group, "Mn")).isEqualTo(Verdict.ENRICHED);
        assertThat(Answers.verdict(group, "Si")).isEqualTo(Verdict.ENRICHED);
        assertThat(Answers.verdict(group, "Fe")).isEqualTo(Verdict.DEPLETED);
        assertThat(Answers.verdict(group, "Ni")).isEqualTo(Verdict.DEPLETED);
        assertThat(group.explanationSet()).as("more than one element changed").contains(List.of());
        assertThat(group.foreign()).singleElement().satisfies(oxygen -> {
            assertThat(oxygen.element().symbol()).isEqualTo("O");
            assertThat(oxygen.present()).isTrue();
        });
        assertThat(group.caveats()).as("oxygen is usual on a surface").noneMatch(c -> c.code().equals("foreign-element"));
    }

    @Test
    void what_may_be_absent_is_never_depleted_nor_leans_that_way() {
        InventedTable none = InventedTable.inMass("Fe Cr Ni Mo Mn Si");
        for (String particle : List.of("P1", "P2", "P3", "P4")) {
            none.row(particle, "68.1 17.2 12.2 2.5 -0.25 0.00").row(particle, "68.2 17.0 12.3 2.4 -0.22 -0.01");
        }
        GroupFinding group = Answers.only(Answers.of("316l", STANDARDS_BASED, "C N P S", none));
        for (String symbol : List.of("Mn", "Si")) {
            Outcome outcome = Answers.outcome(group, symbol);
            assertThat(outcome.verdict()).as(symbol).isEqualTo(Verdict.CONSISTENT);
            assertThat(outcome.lean()).isEmpty();
            assertThat(outcome.pValue()).hasValue(1);
            assertThat(outcome.enrichmentFactor()).isEmpty();
        }
        assertThat(Answers.outcome(group, "Mn").mean()).as("a negative mean is a measurement and stays").isNegative();
    }

    /** Pb at most 0.07 wt%, Fe at most 0.05 wt%; a limit assumed at 0.3 wt% says nothing of either. */
    @ParameterizedTest
    @CsvSource({"<0.05, CONSISTENT", "<0.07, CONSISTENT", "<0.09, INCONCLUSIVE", "n.d., INCONCLUSIVE"})
    void an_element_below_its_limit_everywhere_is_in_order_where_that_limit_keeps_the_specification(String cell,
                                                                                                    Verdict verdict) {
        InventedTable brass = InventedTable.inMass("Cu Zn Pb");
        for (String particle : List.of("P1", "P2", "P3")) {
            brass.row(particle, "69.8 30.1 " + cell).row(particle, "70.2 29.7 " + cell);
        }
        GroupFinding group = Answers.only(Answers.of("cartridge-brass", STANDARDS_BASED, "", brass));
        ElementFinding lead = Answers.element(group, "Pb");
        assertThat(lead.outcome().verdict()).isEqualTo(verdict);
        boolean settled = verdict == Verdict.CONSISTENT;
        assertThat(lead.outcome().reason().isEmpty()).isEqualTo(settled);
        assertThat(group.caveats().stream().anyMatch(c -> c.code().equals("limit-above-nominal"))).isEqualTo(!settled);
        assertThat(group.notMeasured()).extracting(Element::symbol).containsExactly("Fe");
    }

    @Test
    void a_limit_above_what_is_allowed_is_told_with_both_numbers() {
        GroupFinding group = Answers.only(Answers.of("316l", STANDARDLESS, "", steelInOrder()));
        assertThat(Answers.outcome(group, "C").reason()).contains(Reason.LIMIT_ABOVE_NOMINAL);
        assertThat(group.caveats()).anySatisfy(caveat -> {
            assertThat(caveat.code()).isEqualTo("limit-above-nominal");
            assertThat(caveat.detail()).isEqualTo("The limit of C, about 1.4 at%, lies above its nominal of at most 0.14 at%.");
        });
        assertThat(group.caveats()).as("every element that can be settled is settled")
            .noneMatch(caveat -> caveat.code().equals("margin-below-calibration"));
    }

    @Test
    void a_minor_element_near_its_limit_is_judged_with_zero_and_with_the_limit_in_its_place() {
        InventedTable titanium = InventedTable.inMass("Ti Al V Fe")
            .row("P1", "89.6 6.1 4.0 0.21").row("P1", "89.8 6.2 3.9 0.15").row("P2", "89.9 5.9 4.1 0.18")
            .row("P2", "89.5 6.1 4.2 <0.2").row("P3", "89.7 6.2 3.9 0.22").row("P3", "89.9 6.0 4.0 0.12");
        ElementFinding iron = Answers.element(
            Answers.only(Answers.of("ti-6al-4v", STANDARDS_BASED, "O N C H", titanium)), "Fe");
        assertThat(iron.belowLimitCount()).isEqualTo(1);
        assertThat(iron.limitAssumed()).isFalse();
        assertThat(iron.outcome().verdict()).isEqualTo(Verdict.CONSISTENT);
        assertThat(iron.outcome().high()).isGreaterThan(iron.outcome().mean());
    }

    @Test
    void an_element_outside_the_nominal_is_foreign_with_how_much_was_found() {
        InventedTable brass = InventedTable.inMass("Cu Zn Sn").row("P1", "69.7 29.5 0.8").row("P1", "69.8 29.4 0.8")
            .row("P2", "69.9 29.4 0.7").row("P2", "69.8 29.5 0.7").row("P3", "69.5 29.6 0.9").row("P3", "69.9 29.5 0.6");
        GroupFinding group = Answers.only(Answers.of("cartridge-brass", STANDARDS_BASED, "", brass));
        ForeignElement tin = group.foreign().get(0);
        assertThat(tin.element().symbol()).isEqualTo("Sn");
        assertThat(tin.present()).isTrue();
        assertThat(tin.mean()).isCloseTo(0.75 / 118.71 / (69.77 / 63.546 + 29.48 / 65.38 + 0.75 / 118.71), within(1e-5));
        assertThat(group.caveats()).anySatisfy(caveat -> assertThat(caveat.detail())
            .isEqualTo("Sn is not in the nominal and was found at 0.41 at% of everything reported."));
        assertThat(Answers.verdict(group, "Cu")).isEqualTo(Verdict.CONSISTENT);
    }

    @Test
    void an_interdendritic_phase_of_a_nickel_alloy_shows_what_it_gathers() {
        GroupFinding group = Answers.only(Answers.of("alloy-718", STANDARDLESS, "C B P S", niobiumRichPhase()));
        assertThat(Answers.verdict(group, "Nb")).isEqualTo(Verdict.ENRICHED);
        assertThat(Answers.verdict(group, "Mo")).isEqualTo(Verdict.ENRICHED);
        assertThat(Answers.verdict(group, "Fe")).as("its balance range is wide").isEqualTo(Verdict.CONSISTENT);
        assertThat(Answers.verdict(group, "Co")).as("at most 1 wt%, limit assumed 0.3").isEqualTo(Verdict.CONSISTENT);
        assertThat(Answers.element(group, "Al").nextStep().orElseThrow()).containsOnlyOnce("known composition");
    }

    @Test
    void a_mean_just_beyond_a_limit_is_not_flagged_for_what_the_calibration_could_do() {
        InventedTable brass = InventedTable.inMass("Cu Zn").row("P1", "71.9 28.1").row("P1", "72.1 27.9")
            .row("P2", "72.0 28.0").row("P2", "72.2 27.8").row("P3", "71.8 28.2").row("P3", "72.0 28.0");
        Outcome copper = Answers.outcome(Answers.only(Answers.of("cartridge-brass", STANDARDLESS, "", brass)), "Cu");
        assertThat(copper.verdict()).isEqualTo(Verdict.INCONCLUSIVE);
        assertThat(copper.enrichmentFactor().orElseThrow().value()).isBetween(1.0, 1.01);
        assertThat(copper.spotsAgreeOnShift()).as("it repeats from spot to spot all the same").isTrue();
        assertThat(copper.lean()).isEmpty();
    }
}
