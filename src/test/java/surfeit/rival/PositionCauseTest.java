package surfeit.rival;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.segregation.answer.GroupFinding;

/** A feature that was measured in one position only, beside others that were not. Spots are invented. */
class PositionCauseTest {
    private static final String SAMPLE = """
        {"name": "flank and crown", "sample": {"form": "particle", "take_off_angle_deg": 35, "detector_fwhm_ev": 130,
         "mount": "carbon tape", "accuracy_class": "standards-based", "alloy": "al-si-eutectic", "beam_energy_kev": 15},
         "unit": "at%", "groups": [
          {"feature": "flank", "elements": {"Al": 89.6, "Si": 10.4}, "feature_size_um": 20 POSITION_15},
          {"feature": "flank", "elements": {"Al": 89.6, "Si": 10.4}, "beam_energy_kev": 20, "feature_size_um": 20 POSITION_20},
          {"feature": "crown", "elements": {"Al": 87.8, "Si": 12.2}, "feature_size_um": 20 POSITION_OTHER}]}""";

    private static String stated(String position) {
        return position == null ? "" : ", \"position\": \"" + position + "\"";
    }

    @ParameterizedTest
    @CsvSource({"away from detector, away from detector, top, true", "away from detector, top, top, false",
        "away from detector, away from detector, away from detector, false", "away from detector, away from detector, , false",
        ", away from detector, top, false"})
    void position_and_feature_go_together_where_all_of_it_was_seen_in_one_and_every_other_in_others(String at15, String at20,
                                                                                                   String other,
                                                                                                   boolean together)
        throws JsonProcessingException {
        String sample = SAMPLE.replace("POSITION_15", stated(at15)).replace("POSITION_20", stated(at20))
            .replace("POSITION_OTHER", stated(other));
        GroupFinding flank = new InventedCase("flank", new ObjectMapper().readTree(sample)).interpret().groups().stream()
            .filter(group -> group.name().startsWith("flank") && group.name().contains("15")).findFirst().orElseThrow();
        List<Rival> told = flank.rivals().stream().filter(rival -> rival.code() == Cause.FEATURE_WITH_POSITION).toList();
        assertThat(told).hasSize(together ? 1 : 0)
            .allMatch(rival -> rival.cause().contains("was only measured away from detector, no other feature there"));
    }
}
