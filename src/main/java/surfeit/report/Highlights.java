package surfeit.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.rival.Rival;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Scope;
import surfeit.segregation.answer.Verdict;

/**
 * The strongest findings of an answer, for a line in a list of samples.
 *
 * <p>Flags go before "consistent", that before "inconclusive"; the surest flag first (least adjusted p), of equally
 * sure ones the largest factor. Two elements are one test and one line, that of the minor element. For two particles
 * the line speaks of these two, as the sentences do.
 *
 * @param spotCount     spots of the answer
 * @param particleCount particles of the answer
 * @param tests         how many of its lines have each verdict
 * @param lines         the strongest ones, at most {@value #MOST_LINES}
 * @param warningCount  caveats of the weight "warning"
 */
public record Highlights(long spotCount, long particleCount, Map<Verdict, Integer> tests, List<Highlight> lines,
                         int warningCount) {
    static final int MOST_LINES = 3;

    private static final Comparator<Candidate> STRONGEST = Comparator.comparingInt(Candidate::rank)
        .thenComparingDouble(Candidate::p).thenComparing(Comparator.comparingDouble(Candidate::shift).reversed());

    public Highlights {
        tests = Map.copyOf(tests);
        lines = List.copyOf(lines);
    }

    /** A finding that may become a line. */
    private record Candidate(GroupFinding group, ElementFinding finding, boolean these) {
        Outcome outcome() {
            return these ? finding.theseParticles().orElse(finding.outcome()) : finding.outcome();
        }

        Judged judged() {
            return new Judged(finding, outcome(), group.spotCount());
        }

        int rank() {
            return switch (outcome().verdict()) {
                case ENRICHED, DEPLETED -> 0;
                case CONSISTENT -> 1;
                case INCONCLUSIVE -> 2;
            };
        }

        double p() {
            return Confidence.pValue(outcome()).orElse(1);
        }

        double shift() {
            return judged().hasFactor() ? Math.abs(Math.log(outcome().enrichmentFactor().orElseThrow().value()))
                : Math.abs(outcome().difference().value());
        }
    }

    /** The strongest findings of an answer. */
    public static Highlights of(Interpretation interpretation, Signs signs) {
        List<Candidate> candidates = new ArrayList<>();
        interpretation.groups().forEach(group -> candidates.addAll(candidates(group)));
        candidates.sort(STRONGEST);
        Map<Verdict, Integer> tests = new EnumMap<>(Verdict.class);
        candidates.forEach(candidate -> tests.merge(candidate.outcome().verdict(), 1, Integer::sum));
        double margin = interpretation.settings().judgement().marginOddsRatio();
        long warnings = warnings(interpretation.caveats())
            + interpretation.groups().stream().mapToLong(group -> warnings(group.caveats())).sum();
        return new Highlights(interpretation.spotCount(), interpretation.particleCount(), tests,
            candidates.stream().limit(MOST_LINES).map(candidate -> line(candidate, margin, signs)).toList(),
            (int) warnings);
    }

    private static long warnings(List<Caveat> caveats) {
        return caveats.stream().filter(caveat -> caveat.weight() == Caveat.Weight.WARNING).count();
    }

    private static List<Candidate> candidates(GroupFinding group) {
        boolean these = group.weakTwoParticles()
            && group.elements().stream().allMatch(finding -> finding.theseParticles().isPresent());
        List<Candidate> all = group.elements().stream().map(finding -> new Candidate(group, finding, these)).toList();
        if (all.size() != 2) {
            return all;
        }
        Judged leading = VerdictWords.leading(all.stream().map(Candidate::judged).toList());
        return all.stream().filter(candidate -> candidate.finding() == leading.finding()).toList();
    }

    private static Highlight line(Candidate candidate, double margin, Signs signs) {
        Judged judged = candidate.judged();
        GroupFinding group = candidate.group();
        double nominal = judged.nominalMiddle();
        Optional<Estimate> factor = judged.hasFactor() && !judged.isBelowLimitEverywhere()
            ? judged.outcome().enrichmentFactor() : Optional.empty();
        return new Highlight(judged.verdict(), judged.verdictWords() + scope(group, candidate.these()),
            judged.symbol(), group.name(), judged.size(signs), factor,
            new Highlight.Margin(1 / (margin * (1 - nominal) + nominal), margin / (1 - nominal + margin * nominal)),
            Confidence.oneIn(judged.outcome()),
            judged.isFlagged() ? rival(group, judged.symbol()) : Optional.empty());
    }

    private static String scope(GroupFinding group, boolean these) {
        if (these) {
            return " on these two particles";
        }
        return group.scope() == Scope.THIS_PARTICLE ? " on one particle"
            : group.scope() == Scope.THIS_SPOT ? " on one spot" : group.weakTwoParticles() ? " (weak, two particles)"
            : "";
    }

    private static Optional<String> rival(GroupFinding group, String symbol) {
        return group.rivals().stream().filter(rival -> rival.couldExplain() == Rival.CouldExplain.YES)
            .filter(rival -> group.elements().size() == 2
                || rival.element().map(element -> element.symbol().equals(symbol)).orElse(true))
            .findFirst().map(Rival::cause);
    }
}
