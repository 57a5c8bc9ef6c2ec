package surfeit.lab;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.spot.Spot;

/** What every spot must keep to before it is recorded, whichever form it came in. */
final class SpotRules {
    /** Before the first electron probe, and past any clock's excuse. */
    private static final int YEAR_MIN = 1900;
    private static final int YEAR_MAX = 2200;

    private SpotRules() {
    }

    static List<Fault> faults(Spot spot, Place place) {
        List<Fault> faults = new ArrayList<>();
        checkName(faults, place, "label", Optional.of(spot.label()));
        checkName(faults, place, "session", spot.session());
        checkName(faults, place, "particle", spot.particle());
        checkName(faults, place, "feature", spot.feature());
        spot.acquiredTime().filter(time -> time.getYear() < YEAR_MIN || time.getYear() > YEAR_MAX).ifPresent(time ->
            faults.add(Fault.at(place, Problem.VALUE_OUT_OF_RANGE, "A spot was acquired in the years " + YEAR_MIN
                + " to " + YEAR_MAX + ", got " + time + ".", time.toString())));
        return faults;
    }

    private static void checkName(List<Fault> faults, Place place, String field, Optional<String> text) {
        if (text.isPresent()) {
            Names.faultOf(field, text.get()).ifPresent(detail ->
                faults.add(Fault.at(place, Problem.NAME_INVALID, detail, text.get())));
        }
    }
}
