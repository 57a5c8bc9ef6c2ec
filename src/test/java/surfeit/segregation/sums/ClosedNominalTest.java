package surfeit.segregation.sums;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static surfeit.spot.AccuracyClass.STANDARDLESS;

import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.element.Element;
import surfeit.segregation.Answers;
import surfeit.segregation.InventedTable;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;

/** Which elements of a nominal are compared, through the public entry. Every spot is invented. */
class ClosedNominalTest {
    private static InventedTable braze() {
        return InventedTable.inAtoms("Ag Cu Zn").row("P1", "58.1 40.9 1.0").row("P1", "58.5 40.7 0.8").row("P2", "58.9 40.4 0.7")
            .row("P2", "58.4 41.0 0.6").row("P3", "58.1 41.2 0.7").row("P3", "58.0 41.5 0.5");
    }

    @Test
    void an_element_the_nominal_says_there_is_none_of_is_foreign_and_has_no_factor() {
        Nominal nominal = NominalText.parse("Ag:60.1,Cu:39.9,Zn:0", Basis.ATOMIC);
        Interpretation answer = Answers.of(nominal, STANDARDLESS, "", braze());
        GroupFinding group = Answers.only(answer);
        assertThat(group.elements()).extracting(finding -> finding.element().symbol()).containsExactly("Ag", "Cu");
        assertThat(group.foreign()).singleElement().satisfies(zinc -> assertThat(zinc.present()).isTrue());
        assertThat(answer.nominalFractions().elements()).extracting(Element::symbol).containsExactly("Ag", "Cu");
        assertThat(group.notMeasured()).isEmpty();
    }

    @Test
    void a_nominal_of_one_element_leaves_nothing_to_compare() {
        Nominal pure = NominalText.parse("Ag:100", Basis.ATOMIC);
        assertRefused(pure);
        assertRefused(NominalText.parse("Ag:100,Cu:0", Basis.ATOMIC));
    }

    @Test
    void excluding_all_but_one_element_leaves_nothing_to_compare() {
        Nominal nominal = NominalText.parse("Ag:60.1,Cu:39.9", Basis.ATOMIC);
        assertThatThrownBy(() -> Answers.of(nominal, STANDARDLESS, "Cu", braze())).isInstanceOf(CompositionException.class)
            .hasMessageContaining("1 element(s)");
    }

    private static void assertRefused(Nominal nominal) {
        assertThatThrownBy(() -> Answers.of(nominal, STANDARDLESS, "", braze()))
            .isInstanceOfSatisfying(CompositionException.class,
                refusal -> assertThat(refusal.kind()).isEqualTo(CompositionException.Kind.TOO_FEW_ELEMENTS));
    }
}
