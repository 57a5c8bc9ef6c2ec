package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.spot.Conditions;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

class SeenSpotsTest {
    private final SeenSpots seen = new SeenSpots();

    @Test
    void a_hundred_thousand_spots_are_each_found_again_with_their_place() {
        for (int i = 1; i <= 100_000; i++) {
            assertThat(seen.look(spot("P" + i, "1", "62.4"), i)).isEqualTo(SeenSpots.Before.NOTHING);
        }
        for (int i = 1; i <= 100_000; i += 7) {
            assertThat(seen.look(spot("P" + i, "1", "62.4"), 7)).isEqualTo(SeenSpots.Before.THE_SAME);
            assertThat(seen.firstPlace()).isEqualTo(i);
            assertThat(seen.look(spot("P" + i, "1", "62.5"), 7)).isEqualTo(SeenSpots.Before.OTHER_VALUES);
        }
    }

    @Test
    void the_same_value_printed_otherwise_is_the_same() {
        seen.look(spot("P1", "1", "62.4"), 1);

        assertThat(seen.look(spot("P1", "1", "62.40"), 2)).isEqualTo(SeenSpots.Before.THE_SAME);
        assertThat(seen.look(spot("P1", "2", "62.4"), 3)).isEqualTo(SeenSpots.Before.OTHER_VALUES);
    }

    @Test
    void one_moment_in_two_zones_is_one_moment() {
        Spot berlin = at("2026-11-20T14:03:00+01:00");

        seen.look(berlin, 1);
        assertThat(seen.look(at("2026-11-20T13:03:00Z"), 2)).isEqualTo(SeenSpots.Before.THE_SAME);
        assertThat(seen.look(at("2026-11-20T14:03:00Z"), 3)).isEqualTo(SeenSpots.Before.NOTHING);
    }

    private static Spot at(String time) {
        Spot spot = spot("P1", "1", "62.4");
        return new Spot(spot.label(), spot.particle(), spot.feature(), spot.session(),
            Optional.of(OffsetDateTime.parse(time)),
            spot.conditions(), spot.reference(), spot.basis(), spot.values());
    }

    private static Spot spot(String label, String particle, String silver) {
        return new Spot(label, Optional.of(particle), Optional.empty(), Optional.empty(), Optional.empty(),
            Conditions.UNKNOWN,
            Optional.empty(), Basis.ATOMIC,
            Map.of(Element.of("Ag"), ReportedValue.Measured.of(Double.parseDouble(silver) / 100, silver)));
    }
}
