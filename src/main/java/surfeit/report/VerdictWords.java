package surfeit.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import surfeit.segregation.answer.Verdict;

/** The verdicts of a group in one clause; in a binary both elements are one test, so it is said once. */
final class VerdictWords {
    private final double margin;
    private final Signs signs;
    private final boolean withSeen;

    VerdictWords(double margin, Signs signs) {
        this(margin, signs, true);
    }

    private VerdictWords(double margin, Signs signs, boolean withSeen) {
        this.margin = margin;
        this.signs = signs;
        this.withSeen = withSeen;
    }

    /** The same without telling on how many particles it was seen, for a second scope of one group. */
    VerdictWords withoutSeen() {
        return new VerdictWords(margin, signs, false);
    }

    /** {@code Cu enriched, x1.96 (1.71 to 2.15), Ag depleted with it}. */
    String of(List<Judged> elements) {
        return elements.size() == 2 ? ofBinary(leading(elements), other(elements)) : ofMany(elements);
    }

    /** The element whose factor says most: the minor one of nominal; of two equal ones the enriched, else the first. */
    static Judged leading(List<Judged> elements) {
        return elements.stream()
            .min(Comparator.comparingDouble(Judged::nominalMiddle)
                .thenComparing(judged -> judged.verdict() != Verdict.ENRICHED))
            .orElseThrow();
    }

    /** What the margin is called in a sentence: {@code a factor (odds) of 1.25}. */
    String margin() {
        return "a factor (odds) of " + Digits.setting(margin);
    }

    private static Judged other(List<Judged> elements) {
        return elements.get(0) == leading(elements) ? elements.get(1) : elements.get(0);
    }

    private String ofBinary(Judged lead, Judged other) {
        if (lead.isFlagged()) {
            String with = other.isFlagged() ? ", " + other.symbol() + " " + other.verdict().word() + " with it" : "";
            return flag(lead) + with + seen(lead);
        }
        if (lead.verdict() == Verdict.CONSISTENT) {
            return lead.symbol() + " consistent, " + lead.size(signs) + ", " + other.symbol() + " with it: "
                + shown(List.of(lead)) + smallShift(lead);
        }
        return lead.symbol() + " " + lead.verdictWords() + ", " + lead.size(signs);
    }

    private String ofMany(List<Judged> elements) {
        List<String> clauses = new ArrayList<>();
        elements.stream().filter(Judged::isFlagged).forEach(judged -> clauses.add(flag(judged) + seen(judged)));
        List<Judged> consistent = only(elements, judged -> judged.verdict() == Verdict.CONSISTENT);
        if (!consistent.isEmpty()) {
            clauses.add(Listing.and(symbols(consistent)) + " consistent (" + shown(consistent) + ")"
                + smallShifts(consistent));
        }
        List<Judged> inconclusive = only(elements, Judged::isInconclusive);
        if (!inconclusive.isEmpty()) {
            clauses.add(Listing.and(symbols(inconclusive)) + " inconclusive" + leans(inconclusive));
        }
        return String.join("; ", clauses);
    }

    private String flag(Judged judged) {
        return judged.symbol() + " " + judged.verdict().word() + (judged.isBelowLimitEverywhere() ? ": " : ", ")
            + judged.size(signs);
    }

    private String seen(Judged judged) {
        return judged.finding().seenOn().filter(seen -> withSeen && seen.of() > 1)
            .map(seen -> ", seen individually on " + seen.particles() + " of " + seen.of() + " particles"
                + untested(seen.of() - seen.tested())).orElse("");
    }

    /** Those with one spot and no stated uncertainty do not count against it. */
    private static String untested(int particles) {
        return particles == 0 ? "" : " (" + particles + " cannot be tested alone)";
    }

    private String shown(List<Judged> consistent) {
        boolean ranges = consistent.stream().allMatch(Judged::isRange);
        String aim = consistent.size() == 1 ? "that range" : "their ranges";
        return "shown to lie within " + margin() + " of " + (ranges ? aim : "nominal");
    }

    private static String smallShift(Judged judged) {
        boolean detected = judged.outcome().smallShiftDetected();
        return detected ? "; a small shift inside it is detected, " + direction(judged) : "";
    }

    private static String smallShifts(List<Judged> consistent) {
        List<String> shifted = only(consistent, judged -> judged.outcome().smallShiftDetected()).stream()
            .map(judged -> judged.symbol() + " " + direction(judged)).toList();
        return shifted.isEmpty() ? "" : ", with small shifts detected inside it: " + Listing.and(shifted);
    }

    private static String direction(Judged judged) {
        return judged.outcome().difference().value() > 0 ? "upward" : "downward";
    }

    private static String leans(List<Judged> inconclusive) {
        List<String> leans = inconclusive.stream().filter(judged -> judged.outcome().lean().isPresent())
            .map(judged -> (inconclusive.size() == 1 ? "" : judged.symbol() + " ") + "leans "
                + judged.outcome().lean().orElseThrow().word()).toList();
        return leans.isEmpty() ? "" : " (" + String.join(", ", leans) + ")";
    }

    static List<String> symbols(List<Judged> elements) {
        return elements.stream().map(Judged::symbol).toList();
    }

    static List<Judged> only(List<Judged> elements, Predicate<Judged> which) {
        List<Judged> found = new ArrayList<>(elements.size());
        for (Judged judged : elements) {
            if (which.test(judged)) {
                found.add(judged);
            }
        }
        return found;
    }
}
