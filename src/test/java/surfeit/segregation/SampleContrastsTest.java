package surfeit.segregation;

import static org.assertj.core.api.Assertions.assertThat;
import static surfeit.spot.AccuracyClass.STANDARDLESS;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.Scope;

/** Features of one sample against each other, through the public entry. Every number is invented. */
class SampleContrastsTest {
    private static final Nominal AG_CU = NominalText.parse("Ag:60.1,Cu:39.9", Basis.ATOMIC);

    /** Two spots of a feature on each of these particles, around this much silver. */
    private static InventedTable add(InventedTable table, String feature, double silver, String... particles) {
        table.feature(feature);
        double shift = 0.1;
        for (String particle : particles) {
            table.row(particle, silver + shift, 100 - silver - shift)
                .row(particle, silver - 2 * shift, 100 - silver + 2 * shift);
            shift = -1.3 * shift;
        }
        return table;
    }

    private static List<Contrast> contrasts(InventedTable table) {
        return Answers.of(AG_CU, STANDARDLESS, "", table).contrasts();
    }

    @Test
    void features_of_the_same_particles_are_compared_pair_by_pair_and_what_has_no_partner_is_named() {
        InventedTable table = add(InventedTable.inAtoms("Ag Cu"), "dark patch", 22, "P1", "P2", "P3", "P4");
        Contrast contrast = contrasts(add(table, "matrix", 68, "P2", "P3", "P4", "P5")).get(0);
        assertThat(contrast.paired()).isTrue();
        assertThat(contrast.commonParticles()).containsExactly("P2", "P3", "P4");
        assertThat(contrast.leftOut()).containsExactly("P1", "P5");
        assertThat(contrast.correlation()).isEqualTo(0.9);
        assertThat(contrast.elements().get(0).verdict()).isEqualTo(Contrast.Word.LOWER);
        assertThat(contrast.elements().get(1).verdict()).isEqualTo(Contrast.Word.HIGHER);
        assertThat(contrast.scope()).isEqualTo(Scope.PARTICLES);
    }

    @Test
    void two_common_particles_are_too_few_for_pairs_and_the_groups_are_compared() {
        InventedTable table = add(InventedTable.inAtoms("Ag Cu"), "dark patch", 22, "P1", "P2", "P3");
        Contrast contrast = contrasts(add(table, "matrix", 68, "P2", "P3", "P4")).get(0);
        assertThat(contrast.paired()).isFalse();
        assertThat(contrast.commonParticles()).isEmpty();
        assertThat(contrast.leftOut()).isEmpty();
    }

    @Test
    void a_flag_of_few_particles_against_many_is_said_to_be_less_sure() {
        String[] many = {"Q1", "Q2", "Q3", "Q4", "Q5", "Q6", "Q7", "Q8", "Q9"};
        assertThat(unequal(22, 2, many)).contains("2 particles against 9: where nothing differs, such a pair is flagged more"
            + " often than its confidence says, with two particles up to five times. Measure about as many on either side.");
        assertThat(unequal(22, 4, many).orElseThrow()).startsWith("4 particles against 9");
        assertThat(unequal(22, 5, many)).as("enough").isEmpty();
        assertThat(unequal(22, 1, many)).as("tested otherwise").isEmpty();
        assertThat(unequal(22, 2, "Q1", "Q2", "Q3", "Q4")).as("twice as many").isEmpty();
        assertThat(unequal(68, 2, many)).as("no flag").isEmpty();
    }

    /** What is noted of so many particles with a dark patch of this much silver, against a matrix of others with 68 at%. */
    private static Optional<String> unequal(double silver, int few, String... many) {
        String[] patches = IntStream.rangeClosed(1, few).mapToObj(i -> "P" + i).toArray(String[]::new);
        return contrasts(add(add(InventedTable.inAtoms("Ag Cu"), "dark patch", silver, patches), "matrix", 68, many)).get(0)
            .note();
    }

    @Test
    void spots_without_a_particle_are_no_pairs() {
        InventedTable table = add(InventedTable.inAtoms("Ag Cu"), "dark patch", 22, "", "P1", "P2");
        Contrast contrast = contrasts(add(table, "matrix", 68, "", "P1", "P2")).get(0);
        assertThat(contrast.paired()).isFalse();
    }

    @Test
    void up_to_five_features_every_pair_is_compared_and_beyond_each_with_the_largest() {
        InventedTable table = InventedTable.inAtoms("Ag Cu");
        for (int i = 0; i < 5; i++) {
            add(table, "f" + i, 50 + i, "P1", "P2", "P3");
        }
        assertThat(contrasts(table)).hasSize(10);
        add(table, "f5", 40, "P1", "P2", "P3", "P4");
        assertThat(contrasts(table)).hasSize(5)
            .allMatch(contrast -> contrast.groupA().equals("f5") || contrast.groupB().equals("f5"));
    }

    @Test
    void features_are_compared_at_the_same_beam_energy_and_one_feature_across_energies_with_a_note() {
        InventedTable table = InventedTable.inAtoms("Ag Cu");
        for (double kev : new double[] {5, 15}) {
            add(table.atKev(kev), "dark patch", 22, "P1", "P2", "P3");
            add(table, "matrix", 68, "P1", "P2", "P3");
        }
        List<Contrast> contrasts = contrasts(table);
        assertThat(contrasts).extracting(contrast -> contrast.groupA() + " | " + contrast.groupB())
            .containsExactlyInAnyOrder("dark patch @ 5 keV | matrix @ 5 keV", "dark patch @ 15 keV | matrix @ 15 keV",
                "dark patch @ 5 keV | dark patch @ 15 keV", "matrix @ 5 keV | matrix @ 15 keV");
        assertThat(contrasts).filteredOn(contrast -> contrast.note().isPresent()).hasSize(2)
            .allMatch(contrast -> contrast.correlation() == 0 && contrast.note().orElseThrow().contains("other depth"));
    }

    @Test
    void features_of_two_sessions_share_no_calibration_error() {
        InventedTable table = add(InventedTable.inAtoms("Ag Cu").session("s1"), "dark patch", 22, "P1", "P2", "P3");
        Contrast contrast = contrasts(add(table.session("s2"), "matrix", 68, "P1", "P2", "P3")).get(0);
        assertThat(contrast.correlation()).isZero();
        assertThat(contrast.note()).contains("Different sessions: the calibration error does not cancel.");
    }

    @Test
    void in_a_table_without_sessions_everything_is_of_one() {
        InventedTable table = add(InventedTable.inAtoms("Ag Cu").session(""), "dark patch", 22, "P1", "P2", "P3");
        assertThat(contrasts(add(table, "matrix", 68, "P1", "P2", "P3")).get(0).correlation()).isEqualTo(0.9);
    }

    @Test
    void reference_spots_do_not_touch_a_contrast_because_the_error_cancels() {
        InventedTable plain = add(InventedTable.inAtoms("Ag Cu"), "dark patch", 22, "P1", "P2", "P3");
        add(plain, "matrix", 68, "P1", "P2", "P3");
        List<Contrast> without = contrasts(plain);
        plain.onReference(AG_CU, false).row("", 55, 45).row("", 55.2, 44.8).row("", 54.9, 45.1);
        assertThat(contrasts(plain)).isEqualTo(without);
    }

    @Test
    void particle_by_particle_there_are_no_contrasts() {
        InventedTable table = add(InventedTable.inAtoms("Ag Cu"), "dark patch", 22, "P1", "P2", "P3");
        Interpretation answer = new Interpreter().interpret(Answers.sample(AG_CU, STANDARDLESS, ""), AG_CU,
            table.source(), GroupBy.PARTICLE, Answers.LIMIT);
        assertThat(answer.groups()).hasSize(3);
        assertThat(answer.contrasts()).isEmpty();
    }

    /** 0.15 at% of tin or none: the difference counts only where zero and the limit in its place agree. */
    @Test
    void a_minor_element_below_its_limit_on_one_side_is_compared_both_ways() {
        Nominal solder = NominalText.parse("Sn:0.5-2,Ag:60,Cu:bal", Basis.ATOMIC);
        InventedTable table = InventedTable.inAtoms("Sn Ag Cu").feature("rim");
        for (String particle : List.of("P1", "P2", "P3")) {
            table.feature("rim").row(particle, "n.d. 60.2 39.8").row(particle, "n.d. 60.0 40.0");
            table.feature("core").row(particle, "0.1 60.1 39.8").row(particle, "0.2 59.9 39.9");
        }
        Contrast contrast = Answers.of(solder, STANDARDLESS, "", table).contrasts().get(0);
        Contrast.ElementContrast tin = contrast.elements().get(0);
        assertThat(tin.verdict()).as("the limit assumed is 0.3 wt%, 0.22 at%").isEqualTo(Contrast.Word.INCONCLUSIVE);
        assertThat(tin.pValue()).hasValue(1);
        assertThat(tin.difference().low()).isNegative();
    }
}
