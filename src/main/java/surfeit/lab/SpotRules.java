package surfeit.lab;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.spot.Spot;

/** What every spot must keep to before it is recorded, whichever form it came in. */
final class SpotRules {
    private SpotRules() {
    }

    static List<Fault> faults(Spot spot, Place place) {
        List<Fault> faults = new ArrayList<>();
        checkName(faults, place, "label", Optional.of(spot.label()));
        checkName(faults, place, "session", spot.session());
        checkName(faults, place, "particle", spot.particle());
        checkName(faults, place, "feature", spot.feature());
        return faults;
    }

    private static void checkName(List<Fault> faults, Place place, String field, Optional<String> text) {
        text.flatMap(name -> Names.faultOf(field, name)).ifPresent(detail ->
            faults.add(Fault.at(place, Problem.NAME_INVALID, detail, text.orElseThrow())));
    }
}
