package surfeit.http;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Predicate;
import surfeit.element.Element;
import surfeit.lab.Laboratory;
import surfeit.lab.Page;
import surfeit.lab.PageRequest;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.PublicId;
import surfeit.lab.SampleFilter;
import surfeit.lab.StoredReading;
import surfeit.lab.StoredSample;
import surfeit.lab.StoredSpot;
import surfeit.segregation.answer.Verdict;

/**
 * Which result rows are wanted; goes through the samples by name and their spots in the order of record.
 *
 * @param from acquired at this time or later
 * @param to   acquired before this time
 */
record ResultQuery(Optional<String> sample, Optional<Element> element, Optional<Verdict> verdict,
                   Optional<Instant> from, Optional<Instant> to) {
    /** Samples read in one piece; bounds the memory, not the list. */
    private static final int SAMPLES_AT_ONCE = 200;
    static final String[] PARAMETERS = {"sample", "element", "verdict", "from", "to"};

    static ResultQuery of(Parameters parameters) {
        return new ResultQuery(parameters.text("sample"), parameters.text("element").map(ResultQuery::element),
            parameters.oneOf("verdict", screened(), Verdict::word),
            time(parameters, "from"), time(parameters, "to"));
    }

    /** A screening finds no spot consistent. */
    static Verdict[] screened() {
        return Arrays.stream(Verdict.values()).filter(verdict -> verdict != Verdict.CONSISTENT).toArray(Verdict[]::new);
    }

    private static Element element(String symbol) {
        try {
            return Element.of(symbol);
        } catch (IllegalArgumentException e) {
            throw new ProblemException(Problem.UNKNOWN_ELEMENT, e.getMessage());
        }
    }

    private static Optional<Instant> time(Parameters parameters, String name) {
        return parameters.text(name).map(text -> {
            try {
                return OffsetDateTime.parse(text).toInstant();
            } catch (DateTimeParseException e) {
                throw new ProblemException(Problem.TIME_WITHOUT_ZONE, "Expected " + name
                    + " to be a time with an offset such as 2026-11-20T14:03:00+01:00 (in an address the plus is "
                    + "written %2B); got \""
                    + text + "\".");
            }
        });
    }

    /** Where a list goes on: after a spot of a sample. */
    record Position(String sample, long spot) {
        static Position of(String key) {
            int slash = key.indexOf('/');
            OptionalLong spot = PublicId.number(PublicId.SPOT, key.substring(slash + 1));
            if (slash < 0 || spot.isEmpty()) {
                throw new ProblemException(Problem.CURSOR_MISMATCH, "The cursor does not continue this list.");
            }
            return new Position(key.substring(0, slash), spot.getAsLong());
        }

        static String key(StoredSpot spot) {
            return spot.sample() + "/" + spot.id();
        }
    }

    /**
     * Hands over the rows of one spot after another, until no more are wanted; spots without a row that matches are
     * left out.
     *
     * @param after where to go on; the beginning where it is empty
     * @param taken takes the rows of a spot; false where they were the last ones wanted
     */
    void forEachSpot(Laboratory laboratory, Optional<Position> after, Predicate<List<ResultRow>> taken) {
        if (sample.isPresent()) {
            laboratory.readings().forEach(sample.get(), after.map(Position::spot).orElse(0L), wanted(taken));
            return;
        }
        boolean goesOn = after.isEmpty() || screen(laboratory, after.get().sample(), after.get().spot(), taken);
        Optional<String> name = after.map(Position::sample);
        while (goesOn) {
            Page<StoredSample> page = laboratory.samples(SampleFilter.ALL, new PageRequest(SAMPLES_AT_ONCE, name));
            for (StoredSample stored : page.items()) {
                goesOn = goesOn && (stored.spotCount() == 0 || screen(laboratory, stored.name(), 0, taken));
            }
            name = page.next();
            goesOn = goesOn && name.isPresent();
        }
    }

    /** A sample among many that cannot be screened has no rows; asked for by name, it says why. */
    private boolean screen(Laboratory laboratory, String name, long after, Predicate<List<ResultRow>> taken) {
        try {
            return laboratory.readings().forEach(name, after, wanted(taken));
        } catch (ProblemException e) {
            if (e.problem() != Problem.TOO_FEW_ELEMENTS) {
                throw e;
            }
            return true;
        }
    }

    private Predicate<StoredReading> wanted(Predicate<List<ResultRow>> taken) {
        return reading -> {
            if (!isInTime(reading)) {
                return true;
            }
            List<ResultRow> rows = ResultRow.of(reading).stream().filter(this::matches).toList();
            return rows.isEmpty() || taken.test(rows);
        };
    }

    private boolean isInTime(StoredReading reading) {
        if (from.isEmpty() && to.isEmpty()) {
            return true;
        }
        Optional<Instant> acquired = reading.stored().spot().acquiredTime().map(OffsetDateTime::toInstant);
        return acquired.isPresent() && from.map(time -> !acquired.get().isBefore(time)).orElse(true)
            && to.map(time -> acquired.get().isBefore(time)).orElse(true);
    }

    private boolean matches(ResultRow row) {
        return element.map(wanted -> wanted.equals(row.reading().element())).orElse(true)
            && verdict.map(wanted -> wanted == row.reading().verdict()).orElse(true);
    }
}
