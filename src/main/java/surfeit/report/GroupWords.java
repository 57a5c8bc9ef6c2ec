package surfeit.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import surfeit.rival.Rival;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Scope;
import surfeit.segregation.answer.SkinLimit;
import surfeit.segregation.answer.Verdict;

/** What one group shows, in sentences to be read aloud: scope, verdicts, how sure, why not, what else, what next. */
final class GroupWords {
    private final VerdictWords verdicts;
    private final GroupFinding group;
    private final boolean speaksOfThese;
    private final List<Judged> headline;
    private final List<Judged> spoken;

    GroupWords(GroupFinding group, double margin, Signs signs) {
        this.group = group;
        this.verdicts = new VerdictWords(margin, signs);
        speaksOfThese = group.weakTwoParticles()
            && group.elements().stream().allMatch(e -> e.theseParticles().isPresent());
        headline = judged(speaksOfThese);
        spoken = headline.size() == 2 ? List.of(VerdictWords.leading(headline)) : headline;
    }

    String text() {
        List<String> sentences = new ArrayList<>();
        sentences.add(group.name() + ", " + scopeWords() + ": " + verdicts.of(headline) + ".");
        addDisclaimer(sentences);
        addHowSure(sentences);
        addOtherScope(sentences);
        PhaseSentence.of(group).ifPresent(sentences::add);
        List<Judged> inconclusive = VerdictWords.only(spoken, Judged::isInconclusive);
        sentences.addAll(new ReasonWords(scope()).sentences(inconclusive, inconclusive.size() == spoken.size()));
        addExplanationSet(sentences);
        addFragile(sentences);
        addRival(sentences);
        group.skinLimit().filter(SkinLimit::cannotCoverParticle).map(SkinSentence::of).ifPresent(sentences::add);
        addOtherElements(sentences);
        addNextSteps(sentences);
        return String.join(" ", sentences);
    }

    /** Each step once; where they differ, with the elements it is for. Two elements are one test, so one step. */
    private void addNextSteps(List<String> sentences) {
        Map<String, List<String>> symbols = new LinkedHashMap<>();
        spoken.forEach(judged -> judged.finding().nextStep().map(Listing::sentence).ifPresent(step ->
            symbols.computeIfAbsent(step, first -> new ArrayList<>()).add(judged.symbol())));
        symbols.forEach((step, elements) ->
            sentences.add(symbols.size() == 1 ? step : "For " + Listing.and(elements) + ": " + step));
    }

    private List<Judged> judged(boolean these) {
        return group.elements().stream()
            .map(finding -> new Judged(finding, outcome(finding, these), group.spotCount())).toList();
    }

    private static Outcome outcome(ElementFinding finding, boolean these) {
        return these ? finding.theseParticles().orElse(finding.outcome()) : finding.outcome();
    }

    private Scope scope() {
        return speaksOfThese ? Scope.THESE_PARTICLES : group.scope();
    }

    private String scopeWords() {
        int particles = group.particles().size();
        return switch (scope()) {
            case PARTICLES -> "on particles of this kind ("
                + (group.weakTwoParticles() ? "weak, two particles" : particles + " measured") + ")";
            case THESE_PARTICLES -> "on these " + particles + " particles";
            case THIS_PARTICLE -> "on this particle";
            case THIS_SPOT -> "on this spot";
        };
    }

    private void addDisclaimer(List<String> sentences) {
        if (spoken.stream().allMatch(Judged::isInconclusive)) {
            return;
        }
        if (scope() == Scope.THIS_PARTICLE) {
            sentences.add("One particle says nothing about the others.");
        } else if (scope() == Scope.THIS_SPOT) {
            sentences.add("One spot says nothing about the rest of the particle.");
        }
    }

    private void addHowSure(List<String> sentences) {
        List<Judged> flagged = VerdictWords.only(spoken, Judged::isFlagged);
        OptionalDouble weakest = flagged.stream().flatMapToDouble(j -> Confidence.pValue(j.outcome()).stream()).max();
        if (weakest.isPresent()) {
            sentences.add(flagged.size() == 1 ? Confidence.ofFlag(weakest.getAsDouble())
                : Confidence.ofWeakestFlag(weakest.getAsDouble()));
        }
        if (spoken.size() == 1 && spoken.get(0).verdict() == Verdict.CONSISTENT) {
            Confidence.pValue(spoken.get(0).outcome()).ifPresent(p -> sentences.add(Confidence.ofConsistent(p)));
        }
    }

    /**
     * Beside the headline: particles of the kind for two particles; the measured ones where only they show something.
     */
    private void addOtherScope(List<String> sentences) {
        if (speaksOfThese) {
            sentences.add("For particles of this kind (weak, two particles): "
                + verdicts.withoutSeen().of(judged(false)) + ".");
        } else if (group.scope() == Scope.PARTICLES && headline.stream().allMatch(Judged::isInconclusive)) {
            List<Judged> these = judged(true);
            if (these.stream().anyMatch(Judged::isFlagged)) {
                sentences.add("On these " + group.particles().size() + " particles themselves: "
                    + verdicts.withoutSeen().of(these) + ".");
            }
        }
    }

    private void addExplanationSet(List<String> sentences) {
        group.explanationSet().ifPresent(set -> {
            List<String> symbols = set.stream().map(Object::toString).toList();
            sentences.add(switch (symbols.size()) {
                case 0 -> "No single element changing explains this: more than one changed.";
                case 1 -> "This alone could come from " + symbols.get(0)
                    + " changing while the rest keeps its proportions.";
                default -> "This could come from one element alone changing while the rest keeps its proportions: "
                    + Listing.or(symbols) + ".";
            });
        });
    }

    private void addFragile(List<String> sentences) {
        Map<List<String>, List<String>> byParticles = new LinkedHashMap<>();
        for (Judged judged : spoken) {
            if (judged.finding().isFragile()) {
                byParticles.computeIfAbsent(judged.finding().fragileWithout(), names -> new ArrayList<>())
                    .add(judged.symbol());
            }
        }
        byParticles.forEach((particles, symbols) -> sentences.add("Fragile: without " + oneOf(particles) + " the verdict"
            + (spoken.size() == 1 ? " changes." : symbols.size() == 1 ? " on " + symbols.get(0) + " changes."
                : "s on " + Listing.and(symbols) + " change.")));
    }

    private String oneOf(List<String> particles) {
        return particles.size() > 2 && particles.size() == group.particles().size() ? "any one of its particles"
            : Listing.or(particles.stream().map(name -> name.isBlank() ? "the unnamed particle" : name).toList());
    }

    private void addRival(List<String> sentences) {
        List<Judged> toExplain = VerdictWords.only(spoken, judged -> judged.isFlagged()
            || judged.outcome().lean().isPresent() || judged.outcome().smallShiftDetected());
        List<Rival> able = group.rivals().stream()
            .filter(rival -> rival.couldExplain() == Rival.CouldExplain.YES && concerns(rival, toExplain)).toList();
        if (!toExplain.isEmpty() && !able.isEmpty()) {
            String more = able.size() > 1 ? " (and " + Listing.count(able.size() - 1L, "other cause") + ")" : "";
            sentences.add("Could alone be explained by: " + Listing.clause(able.get(0).cause()) + more + ".");
        }
    }

    /** A cause weighed for an element of which nothing is said explains nothing said; two elements have one shift. */
    private boolean concerns(Rival rival, List<Judged> said) {
        return rival.element().isEmpty() || headline.size() == 2
            || said.stream().anyMatch(judged -> judged.finding().element().equals(rival.element().get()));
    }

    private void addOtherElements(List<String> sentences) {
        List<String> foreign = group.foreign().stream().filter(ForeignElement::present).map(GroupWords::share).toList();
        if (!foreign.isEmpty()) {
            sentences.add("Also found, outside the nominal: " + Listing.and(foreign) + ".");
        }
        if (!group.notMeasured().isEmpty()) {
            List<String> symbols = group.notMeasured().stream().map(Object::toString).toList();
            sentences.add(Listing.and(symbols) + (symbols.size() == 1 ? " is" : " are")
                + " in no spot's list: left out of data and nominal, not judged.");
        }
    }

    /** A foreign element with its share of everything reported, {@code Fe 1.20 at% (0.85 to 1.55)}. */
    static String share(ForeignElement foreign) {
        return foreign.element() + " " + (foreign.low().isPresent() && foreign.high().isPresent()
            ? Digits.atomicPercentInterval(foreign.mean(), foreign.low().getAsDouble(), foreign.high().getAsDouble())
            : Digits.nominalPercent(foreign.mean()) + " at%");
    }
}
