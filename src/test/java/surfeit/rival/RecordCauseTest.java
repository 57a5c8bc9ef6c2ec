package surfeit.rival;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.segregation.InventedSpots;
import surfeit.segregation.answer.GroupFinding;

/** What the record of a measurement leaves open. Spots are invented. */
class RecordCauseTest {
    private static final String SILVER_COPPER = "Ag:59.8,Cu:40.2";

    private static List<Rival> of(GroupFinding group, Cause cause) {
        return group.rivals().stream().filter(rival -> rival.code() == cause).toList();
    }

    private static InventedSpots add(InventedSpots spots, String feature, String values) {
        for (String particle : List.of("P1", "P2", "P3")) {
            spots.add(feature, particle, values).add(feature, particle, values);
        }
        return spots;
    }

    /** A dark feature at 15 and 5 keV beside a matrix of session a: the other energy is the same feature, not another one. */
    @ParameterizedTest
    @CsvSource({"b, b, true", "b, c, true", "b, a, false", "a, b, false", "a, a, false"})
    void feature_and_session_go_together_where_no_other_feature_was_measured_in_any_of_its_sessions(String at15, String at5,
                                                                                               boolean together) {
        InventedSpots spots = add(new InventedSpots().session("a"), "matrix", "Ag 60.1, Cu 39.9");
        add(spots.session(at15), "dark", "Ag 30, Cu 70");
        add(spots.session(at5).beam(5), "dark", "Ag 31, Cu 69");
        List<GroupFinding> dark = spots.against(SILVER_COPPER).groups().stream()
            .filter(group -> group.name().startsWith("dark")).toList();
        assertThat(dark).hasSize(2).allSatisfy(group ->
            assertThat(of(group, Cause.FEATURE_WITH_SESSION)).hasSize(together ? 1 : 0));
    }

    @ParameterizedTest
    @CsvSource({"15, 0", "30, 0", "60, 1"})
    void a_beam_energy_outside_the_models_is_said_to_leave_them_unasked(double kev, int times) {
        GroupFinding group = add(new InventedSpots().beam(kev), "dark", "Ag 30, Cu 70").against(SILVER_COPPER).groups().get(0);
        List<Rival> energy = of(group, Cause.BEAM_ENERGY);
        assertThat(energy).hasSize(times).allMatch(rival -> rival.cause().equals("beam energy of 60 keV lies outside the models")
            && rival.couldExplain() == Rival.CouldExplain.IN_PART);
    }

    @Test
    void a_limit_above_nominal_could_hide_the_whole_of_an_element() {
        Rival stated = of(add(new InventedSpots(), "matrix", "Sn 99.9, Cu <0.9").against("Sn:99.5,Cu:0.5").groups().get(0),
            Cause.DETECTION_LIMIT).get(0);
        assertThat(stated.couldExplain()).isEqualTo(Rival.CouldExplain.YES);
        assertThat(stated.cause()).matches("detection limit of 0\\.\\d+ at% lies above nominal");
        assertThat(stated.assumes()).isEqualTo("6 spots have the element below it.");
        assertThat(stated.needs()).isEmpty();
        Rival single = of(new InventedSpots().add("matrix", "P1", "Sn 99.9, Cu <0.9").against("Sn:99.5,Cu:0.5").groups().get(0),
            Cause.DETECTION_LIMIT).get(0);
        assertThat(single.assumes()).isEqualTo("1 spot has the element below it.");
        assertThat(of(add(new InventedSpots(), "matrix", "Sn 99.9, Cu <0.1").against("Sn:99.5,Cu:0.5").groups().get(0),
            Cause.DETECTION_LIMIT)).isEmpty();
    }

    /** 0.3 mass% of copper in tin is 0.56 at%: below 1.5 at% nominal, but a limit three times as high is not. */
    @Test
    void an_assumed_limit_may_be_three_times_too_low() {
        Rival assumed = of(add(new InventedSpots(), "matrix", "Sn 100, Cu n.d.").against("Sn:98.5,Cu:1.5").groups().get(0),
            Cause.DETECTION_LIMIT).get(0);
        assertThat(assumed.cause()).isEqualTo("detection limit may lie above nominal: assumed as 0.56 at%");
        assertThat(assumed.assumes()).contains("the true limit may be three times the assumed one");
        assertThat(assumed.needs()).containsExactly("limit");
        assertThat(of(add(new InventedSpots(), "matrix", "Sn 100, Cu n.d.").against("Sn:98,Cu:2").groups().get(0),
            Cause.DETECTION_LIMIT)).isEmpty();
    }
}
