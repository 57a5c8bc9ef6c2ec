package surfeit.http;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.http.board.Look;
import surfeit.http.board.SampleFilterForm;
import surfeit.http.board.SampleLine;
import surfeit.http.board.SamplesPage;
import surfeit.lab.Laboratory;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.RecentSamples;
import surfeit.lab.SampleFilter;
import surfeit.lab.StoredAlloy;
import surfeit.lab.StoredSample;
import surfeit.segregation.answer.Verdict;

/** Puts one page of the list of samples together. */
final class SamplesView {
    /** Samples on a page: what a screen or two show. Judgement. */
    static final int PAGE = 50;
    /**
     * Answers made for one page while samples with a verdict are looked for; then the reader is asked whether to go on.
     * Judgement: a fraction of a second.
     */
    static final int MOST_ANSWERS = 400;
    private static final int READ_AT_ONCE = 200;
    static final String[] PARAMETERS = {"q", "alloy", "verdict", "from", "to", "cursor", "numbers"};

    private final Laboratory laboratory;
    private final StrongestFindings findings;

    SamplesView(Laboratory laboratory) {
        this.laboratory = laboratory;
        this.findings = new StrongestFindings(laboratory);
    }

    /** @param state tells the page from the one after a change */
    SamplesPage page(Parameters parameters, Look look, String state) {
        SampleFilterForm form = new SampleFilterForm(word(parameters, "q").orElse(""),
            word(parameters, "alloy").orElse(""), word(parameters, "verdict").orElse(""),
            word(parameters, "from").orElse(""), word(parameters, "to").orElse(""));
        List<String> list = List.of(Look.SAMPLES, form.toString());
        Optional<RecentSamples.Place> after = word(parameters, "cursor")
            .map(cursor -> RecentSamples.Place.ofKey(Cursor.key(list, cursor)));
        RecentSamples wanted = new RecentSamples(new SampleFilter(some(form.alloy()), some(form.text())),
            day("from", form.from(), 0), day("to", form.to(), 1), after);
        Optional<Verdict> verdict = form.verdict().isEmpty() ? Optional.empty()
            : parameters.oneOf("verdict", Verdict.values(), Verdict::word);
        Map<String, StoredAlloy> alloys = new LinkedHashMap<>();
        laboratory.alloys().forEach(stored -> alloys.put(stored.alloy().id(), stored));
        Search search = new Search(wanted, verdict, alloys);
        return new SamplesPage(look, form, List.copyOf(alloys.keySet()),
            search.lines, after.isEmpty(), search.next.map(place -> Cursor.of(list, place.key())), search.examined,
            state);
    }

    /** Goes through samples until a page is full, all are seen, or too many answers had to be made. */
    private final class Search {
        private final StrongestFindings.Effort effort = new StrongestFindings.Effort();
        private final List<SampleLine> lines = new ArrayList<>();
        private Optional<RecentSamples.Place> next = Optional.empty();
        private int examined;

        Search(RecentSamples wanted, Optional<Verdict> verdict, Map<String, StoredAlloy> alloys) {
            RecentSamples rest = wanted;
            int atOnce = verdict.isPresent() ? READ_AT_ONCE : PAGE + 1;
            while (true) {
                List<StoredSample> samples = laboratory.recentSamples(rest, atOnce);
                for (StoredSample sample : samples) {
                    if (lines.size() == PAGE || effort.made() >= MOST_ANSWERS) {
                        next = rest.after();
                        return;
                    }
                    rest = rest.after(RecentSamples.Place.of(sample));
                    examined++;
                    SampleLine line = findings.of(sample, alloys, effort);
                    if (verdict.isEmpty() || line.shows(verdict.get())) {
                        lines.add(line);
                    }
                }
                if (samples.size() < atOnce) {
                    return;
                }
            }
        }
    }

    /** A field of the form; empty ones come with the address too. */
    static Optional<String> word(Parameters parameters, String name) {
        return parameters.text(name).flatMap(SamplesView::some);
    }

    private static Optional<String> some(String text) {
        return text.isBlank() ? Optional.empty() : Optional.of(text.strip());
    }

    private static Optional<Instant> day(String name, String text, int later) {
        try {
            return some(text).map(day -> LocalDate.parse(day).plusDays(later).atStartOfDay(ZoneOffset.UTC).toInstant());
        } catch (DateTimeParseException e) {
            throw new ProblemException(Problem.VALUE_OUT_OF_RANGE, "Expected " + name
                + " to be a day such as 2026-11-20; got \"" + text + "\".");
        }
    }
}
