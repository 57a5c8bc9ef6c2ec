package surfeit.segregation.nominal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static surfeit.spot.AccuracyClass.STANDARDLESS;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.segregation.Answers;
import surfeit.segregation.InventedTable;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.ReferenceUse;
import surfeit.segregation.answer.Verdict;

/** Spots on a piece of known composition, through the public entry. Every number is invented. */
class ReferenceSpotsTest {
    private static final Nominal AG_CU = NominalText.parse("Ag:60.1,Cu:39.9", Basis.ATOMIC);

    /** Four particles that read 55.4 at% Ag throughout, one session. */
    private static InventedTable powder() {
        return InventedTable.inAtoms("Ag Cu").row("P1", "55.1 44.9").row("P1", "55.5 44.5").row("P2", "55.9 44.1")
            .row("P2", "55.4 44.6").row("P3", "55.1 44.9").row("P3", "55.0 45.0").row("P4", "55.5 44.5")
            .row("P4", "56.0 44.0");
    }

    private static InventedTable fiveOnAPiece(InventedTable spots, boolean sameMaterial) {
        return spots.onReference(AG_CU, sameMaterial).row("", "55.6 44.4").row("", "55.3 44.7").row("", "55.9 44.1")
            .row("", "55.2 44.8").row("", "55.7 44.3");
    }

    private static GroupFinding group(Nominal nominal, InventedTable spots) {
        return Answers.only(Answers.of(nominal, STANDARDLESS, "", spots));
    }

    private static ReferenceUse use(InventedTable spots) {
        return group(AG_CU, spots).reference().orElseThrow();
    }

    @Test
    void without_reference_spots_nothing_is_said_of_them() {
        assertThat(group(AG_CU, powder()).reference()).isEmpty();
        assertThat(Answers.verdict(group(AG_CU, powder()), "Ag")).isEqualTo(Verdict.INCONCLUSIVE);
    }

    @Test
    void five_spots_on_a_piece_settle_what_calibration_left_open() {
        GroupFinding group = group(AG_CU, fiveOnAPiece(powder(), false));
        assertThat(Answers.verdict(group, "Ag")).isEqualTo(Verdict.CONSISTENT);
        assertThat(Answers.outcome(group, "Ag").mean()).isCloseTo(0.600, within(5e-4));
        assertThat(group.caveats()).noneMatch(caveat -> caveat.code().startsWith("reference"));
    }

    /** A mean of zero has no logit, and nothing divides by it. */
    @Test
    void an_element_that_vanished_from_a_group_does_not_break_the_answer() {
        InventedTable spots = InventedTable.inAtoms("Ag Cu").row("P1", "100 0").row("P2", "100 0").row("P3", "100 0");
        GroupFinding group = group(AG_CU, fiveOnAPiece(spots, false));
        assertThat(Answers.verdict(group, "Cu")).isNotEqualTo(Verdict.ENRICHED);
        assertThat(Answers.outcome(group, "Cu").high()).isLessThan(0.1);
    }

    /** The shared error shrinks to the root of 2 (1 - 0.9), 0.447 of itself; the piece's reading is 55.54 at% Ag. */
    @Test
    void the_answer_says_what_was_corrected_by_how_much_from_how_many_spots_and_how_the_uncertainty_changed() {
        ReferenceUse use = use(fiveOnAPiece(powder(), false));
        assertThat(use.used()).isTrue();
        assertThat(use.spotCount()).isEqualTo(5);
        assertThat(use.correlation()).isEqualTo(0.9);
        ReferenceUse.Correction silver = use.corrections().get(0);
        assertThat(silver.usable()).isTrue();
        assertThat(silver.factor()).isCloseTo(0.601 / 0.5554, within(1e-12));
        assertThat(silver.sharedUncertaintyAfter() / silver.sharedUncertaintyBefore())
            .isCloseTo(Math.sqrt(0.2), within(1e-3));
        assertThat(silver.randomUncertaintyAdded()).isGreaterThan(0);
        assertThat(use.explanation()).isEqualTo("Every spot was multiplied by true over measured fraction of the "
            + "reference piece (Ag by 1.082, Cu by 0.897) and closed again; the standard uncertainty of calibration in log odds "
            + "goes from Ag 0.177 to 0.079, Cu 0.177 to 0.079.");
    }

    @Test
    void the_piece_need_not_be_the_nominal_alloy_nor_hold_its_elements_alone() {
        Nominal piece = NominalText.parse("Ag:70,Cu:25,Zn:5", Basis.ATOMIC);
        InventedTable spots = InventedTable.inAtoms("Ag Cu Zn").row("P1", "55.1 44.9 -").row("P1", "55.5 44.5 -")
            .row("P2", "55.9 44.1 -").row("P3", "55.1 44.9 -").onReference(piece, false).row("", "66.0 29.0 5.0")
            .row("", "65.8 29.1 5.1").row("", "66.1 29.0 4.9");
        ReferenceUse use = use(spots);
        assertThat(use.used()).isTrue();
        assertThat(use.corrections().get(0).factor() / use.corrections().get(1).factor())
            .isCloseTo(70.0 / 25 / (65.9667 / 29.0333), within(1e-4));
    }

    @Test
    void another_session_does_not_fit_and_both_are_named() {
        GroupFinding group = group(AG_CU, fiveOnAPiece(powder().session("s2"), false));
        ReferenceUse use = group.reference().orElseThrow();
        assertThat(use.used()).isFalse();
        assertThat(use.corrections()).isEmpty();
        assertThat(use.explanation())
            .isEqualTo("The reference spots are of another session (\"s2\"); those of this group are of \"s1\".");
        assertThat(group.caveats()).anyMatch(caveat -> caveat.code().equals("reference-not-used"));
        assertThat(Answers.outcome(group, "Ag").mean()).as("as measured").isCloseTo(0.5544, within(1e-4));
    }

    @Test
    void spots_without_a_session_fit_each_other_and_no_named_one() {
        InventedTable unnamed = InventedTable.inAtoms("Ag Cu").session("").row("P1", "55.1 44.9").row("P2", "55.9 44.1")
            .row("P3", "55.5 44.5");
        assertThat(use(fiveOnAPiece(unnamed, false)).used()).isTrue();
        assertThat(use(fiveOnAPiece(powder().session(""), false)).explanation()).contains("no stated session");
    }

    @Test
    void another_beam_energy_does_not_fit_and_both_are_named() {
        InventedTable spots = InventedTable.inAtoms("Ag Cu").atKev(15).row("P1", "55.1 44.9").row("P2", "55.5 44.5")
            .row("P3", "55.9 44.1").atKev(20);
        assertThat(use(fiveOnAPiece(spots, false)).explanation()).isEqualTo("The reference spots of this session are "
            + "of another beam energy (20 keV); those of this group are of 15 keV.");
    }

    @Test
    void a_piece_of_other_elements_is_refused() {
        Nominal tinBismuth = NominalText.parse("Sn:80,Bi:20", Basis.ATOMIC);
        InventedTable spots = InventedTable.inAtoms("Ag Cu Sn Bi").row("P1", "55.1 44.9 - -").row("P2", "55.5 44.5 - -")
            .row("P3", "55.9 44.1 - -").onReference(tinBismuth, false).row("", "- - 81 19");
        assertThat(use(spots).explanation())
            .isEqualTo("The reference piece (Sn, Bi) shares no element with the group (Ag, Cu).");
    }

    @Test
    void one_common_element_is_too_few() {
        Nominal silver = NominalText.parse("Ag:100", Basis.ATOMIC);
        InventedTable spots = powder().onReference(silver, false).row("", "99.9 0.1").row("", "99.8 0.2");
        assertThat(use(spots).used()).isFalse();
        assertThat(use(spots).explanation()).startsWith("Fewer than two of Ag, Cu are in the reference piece");
    }

    @Test
    void a_piece_that_reads_wildly_is_not_used() {
        InventedTable wild = powder().onReference(AG_CU, false).row("", 45, 55).row("", 65, 35).row("", 55, 45);
        ReferenceUse use = use(wild);
        assertThat(use.used()).isFalse();
        assertThat(use.explanation()).contains("scatter so much");
        assertThat(use.corrections()).as("what it would have done is shown").hasSize(2);
    }

    @Test
    void a_single_reference_spot_is_accepted_and_marked() {
        GroupFinding group = group(AG_CU, powder().onReference(AG_CU, false).row("", "55.6 44.4"));
        assertThat(group.reference().orElseThrow().used()).isTrue();
        assertThat(group.caveats()).anySatisfy(caveat -> {
            assertThat(caveat.code()).isEqualTo("reference-single-spot");
            assertThat(caveat.weight()).isEqualTo(Caveat.Weight.NOTE);
        });
    }

    @Test
    void a_single_reference_spot_without_any_repeat_tells_nothing_of_its_scatter() {
        InventedTable one = InventedTable.inAtoms("Ag Cu").row("P1", "55.1 44.9").onReference(AG_CU, false)
            .row("", "55.6 44.4");
        assertThat(use(one).used()).isFalse();
        assertThat(use(one).explanation()).contains("Nothing tells how much the reference spot scatters");
    }

    @Test
    void a_piece_of_the_same_material_leaves_the_tolerance_out() {
        Nominal tolerant = NominalText.parse("Ag:60.1+-4,Cu:39.9+-4", Basis.ATOMIC);
        GroupFinding piece = group(tolerant, fiveOnAPiece(powder(), false));
        GroupFinding same = group(tolerant, fiveOnAPiece(powder(), true));
        assertThat(piece.reference().orElseThrow().used()).isTrue();
        assertThat(width(same)).isLessThan(0.75 * width(piece));
        assertThat(same.reference().orElseThrow().explanation()).contains("the particles' own material");
    }

    /** The nominal's tolerance is no fault of the reference: it stays with or without it. */
    @Test
    void a_wide_tolerance_does_not_speak_against_the_reference() {
        Nominal tolerant = NominalText.parse("Ag:60.1+-10,Cu:39.9+-10", Basis.ATOMIC);
        assertThat(group(tolerant, fiveOnAPiece(powder(), false)).reference().orElseThrow().used()).isTrue();
    }

    private static double width(GroupFinding group) {
        return Answers.outcome(group, "Ag").high() - Answers.outcome(group, "Ag").low();
    }

    @Test
    void of_two_pieces_the_one_of_the_same_material_is_taken() {
        Nominal other = NominalText.parse("Ag:50,Cu:50", Basis.ATOMIC);
        InventedTable spots = fiveOnAPiece(powder(), true);
        for (int i = 0; i < 9; i++) {
            spots.onReference(other, false).row("", "46.0 54.0");
        }
        assertThat(use(spots).spotCount()).isEqualTo(5);
    }

    @Test
    void where_sessions_are_put_together_references_are_not_used_and_that_is_said() {
        InventedTable spots = InventedTable.inAtoms("Ag Cu");
        for (String session : new String[] {"s1", "s2", "s3"}) {
            spots.onSpecimen().session(session).row("P1", "55.1 44.9").row("P2", "55.9 44.1");
            spots.onReference(AG_CU, false).row("", "55.6 44.4").row("", "55.3 44.7").row("", "55.9 44.1");
        }
        ReferenceUse use = use(spots);
        assertThat(use.used()).isFalse();
        assertThat(use.explanation()).startsWith("Several sessions are put together here");
    }

    @Test
    void reference_spots_never_count_as_the_specimen() {
        Interpretation answer = Answers.of(AG_CU, STANDARDLESS, "", fiveOnAPiece(powder(), false));
        assertThat(answer.spotCount()).isEqualTo(8);
        assertThat(Answers.only(answer).particles()).containsExactly("P1", "P2", "P3", "P4");
        assertThat(Answers.only(answer).elements().get(0).seenOn()).isNotEqualTo(Optional.empty());
    }
}
