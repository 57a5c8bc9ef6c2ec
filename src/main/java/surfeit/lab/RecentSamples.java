package surfeit.lab;

import java.time.Instant;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which samples are wanted, the last changed first. A sample that changes while a reader turns pages goes to the front;
 * all others keep their order.
 *
 * @param filter by name, description and alloy
 * @param from   last changed at this time or later
 * @param to     last changed before this time
 * @param after  place to go on after
 */
public record RecentSamples(SampleFilter filter, Optional<Instant> from, Optional<Instant> to, Optional<Place> after) {
    /** All of them, from the first. */
    public static final RecentSamples ALL =
        new RecentSamples(SampleFilter.ALL, Optional.empty(), Optional.empty(), Optional.empty());

    private static final Pattern KEY = Pattern.compile("([0-9T:.Z+-]{4,40})~(.{1,64})");

    /** Where a sample stands in that order. */
    public record Place(Instant changed, String name) {
        public static Place of(StoredSample sample) {
            return new Place(sample.changed(), sample.name());
        }

        /** As text, for a cursor. */
        public String key() {
            return changed + "~" + name;
        }

        /** The place that a text names. @throws ProblemException if it names none */
        public static Place ofKey(String key) {
            Matcher matcher = KEY.matcher(key);
            try {
                if (matcher.matches()) {
                    return new Place(Instant.parse(matcher.group(1)), matcher.group(2));
                }
            } catch (java.time.DateTimeException e) {
                throw new ProblemException(Problem.CURSOR_MISMATCH, "The cursor does not continue this list.");
            }
            throw new ProblemException(Problem.CURSOR_MISMATCH, "The cursor does not continue this list.");
        }
    }

    public RecentSamples after(Place place) {
        return new RecentSamples(filter, from, to, Optional.of(place));
    }
}
