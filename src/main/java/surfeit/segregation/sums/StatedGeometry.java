package surfeit.segregation.sums;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.rival.Stance;
import surfeit.spot.Conditions;
import surfeit.spot.Form;
import surfeit.spot.Position;

/** Adds up where on the particle the spots of a group lay and how the surface was tilted there. Not thread-safe. */
final class StatedGeometry {
    private final Map<Optional<Position>, Place> places = new LinkedHashMap<>();
    private Optional<Position> lastPosition = Optional.empty();
    private Optional<Place> last = Optional.empty();

    /** The spots of one position: how many, how many of them state a tilt, and its limits in degrees. */
    private static final class Place {
        private long spots;
        private long tilted;
        private double lowest = Double.POSITIVE_INFINITY;
        private double highest = Double.NEGATIVE_INFINITY;

        void add(Place other) {
            spots += other.spots;
            tilted += other.tilted;
            lowest = Math.min(lowest, other.lowest);
            highest = Math.max(highest, other.highest);
        }
    }

    void add(Conditions conditions) {
        if (last.isEmpty() || !lastPosition.equals(conditions.position())) {
            lastPosition = conditions.position();
            last = Optional.of(places.computeIfAbsent(lastPosition, position -> new Place()));
        }
        Place place = last.get();
        place.spots++;
        if (conditions.tiltDeg().isPresent()) {
            place.tilted++;
            place.lowest = Math.min(place.lowest, conditions.tiltDeg().getAsDouble());
            place.highest = Math.max(place.highest, conditions.tiltDeg().getAsDouble());
        }
    }

    void writeTo(SumsOut out) {
        out.count("positions", places.size());
        places.forEach((position, place) -> {
            out.optionalText("position", position.map(Position::name));
            out.count("spots there", place.spots);
            out.count("spots with a tilt", place.tilted);
            out.real("lowest tilt", place.lowest);
            out.real("highest tilt", place.highest);
        });
    }

    void readFrom(SumsIn in) {
        for (long left = in.count(); left > 0; left--) {
            Place place = new Place();
            places.put(in.yesOrNo() ? Optional.of(in.oneOf(Position.values())) : Optional.empty(), place);
            place.spots = in.count();
            place.tilted = in.count();
            place.lowest = in.real();
            place.highest = in.real();
        }
    }

    void merge(StatedGeometry other) {
        other.places.forEach((position, place) -> places.computeIfAbsent(position, p -> new Place()).add(place));
    }

    /** One stance per position; the tilt counts where every spot there states it. */
    List<Stance> stances(Form form) {
        List<Stance> stances = new ArrayList<>(places.size());
        places.forEach((position, place) -> stances.add(new Stance(position, place.tilted == place.spots
            ? Optional.of(new Stance.Tilt(place.lowest, place.highest)) : Optional.empty(), form, place.spots)));
        return stances;
    }
}
