package surfeit.http;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import surfeit.element.Element;
import surfeit.lab.Laboratory;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.SampleFilter;
import surfeit.lab.StoredReading;
import surfeit.segregation.Verdict;

/**
 * Which result rows are wanted; goes through the samples by name and their spots in the order of record.
 *
 * @param from acquired at this time or later
 * @param to   acquired before this time
 */
record ResultQuery(Optional<String> sample, Optional<Element> element, Optional<Verdict> verdict,
                   Optional<Instant> from, Optional<Instant> to) {
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

    /** Hands over the rows of one spot after another; spots without a row that matches are left out. */
    void forEachSpot(Laboratory laboratory, Consumer<List<ResultRow>> consumer) {
        if (sample.isPresent()) {
            laboratory.forEachReading(sample.get(), reading -> accept(reading, consumer));
        } else {
            laboratory.forEachSample(SampleFilter.ALL, stored -> {
                if (stored.spotCount() > 0) {
                    screen(laboratory, stored.name(), consumer);
                }
            });
        }
    }

    /** A sample among many that cannot be screened has no rows; asked for by name, it says why. */
    private void screen(Laboratory laboratory, String name, Consumer<List<ResultRow>> consumer) {
        try {
            laboratory.forEachReading(name, reading -> accept(reading, consumer));
        } catch (ProblemException e) {
            if (e.problem() != Problem.TOO_FEW_ELEMENTS) {
                throw e;
            }
        }
    }

    private void accept(StoredReading reading, Consumer<List<ResultRow>> consumer) {
        if (!isInTime(reading)) {
            return;
        }
        List<ResultRow> rows = ResultRow.of(reading).stream().filter(this::matches).toList();
        if (!rows.isEmpty()) {
            consumer.accept(rows);
        }
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
