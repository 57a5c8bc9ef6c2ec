package surfeit.segregation.contrast;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import surfeit.element.Element;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.contrast.FeatureComparison.Presence;
import surfeit.segregation.contrast.FeatureComparison.State;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.nominal.SampleReading;
import surfeit.segregation.sums.GroupData;
import surfeit.segregation.sums.GroupKey;
import surfeit.spot.Judgement;
import surfeit.statistics.ScoreInterval;

/** Puts together what became of every feature from one sample to the other. */
public record ComparedFeatures(ReadSample a, ReadSample b, Judgement judgement) {

    /** A sample as it was read over its own nominal, and its own answer; their groups stand in the same order. */
    public record ReadSample(String name, SampleReading reading, Interpretation answer) {
        /** Whether the sample has spots of this name, also such that could not be tested. */
        boolean knows(GroupAnalysis ofTheOther) {
            return reading.names().contains(ofTheOther.data().baseName());
        }

        GroupFinding findingOf(GroupAnalysis analysis) {
            return answer.groups().stream().filter(group -> group.name().equals(analysis.data().name())).findFirst()
                .orElseThrow();
        }
    }

    /** In the order of A, then those only B has. The contrasts belong to the pairs one by one. */
    public List<FeatureComparison> of(GroupMatching matching, List<Optional<GroupContrast>> contrasts) {
        Iterator<Contrast> adjusted =
            Contrasts.adjusted(contrasts.stream().flatMap(Optional::stream).toList(), judgement).iterator();
        List<Optional<Contrast>> findings = new ArrayList<>();
        contrasts.forEach(contrast -> findings.add(contrast.map(made -> adjusted.next())));
        List<FeatureComparison> features = new ArrayList<>();
        for (GroupAnalysis own : a.reading.analyses()) {
            String name = own.data().name();
            boolean paired = false;
            for (int i = 0; i < contrasts.size(); i++) {
                if (matching.pairs().get(i).a().data().name().equals(name)) {
                    features.add(paired(matching.pairs().get(i), contrasts.get(i), findings.get(i)));
                    paired = true;
                }
            }
            if (!paired && !isNamed(name, matching.leftOfA())) {
                features.add(alone(own, a, b.knows(own) ? State.NOT_COMPARED : State.GONE));
            }
        }
        for (GroupAnalysis own : b.reading.analyses()) {
            String name = own.data().baseName();
            boolean told = a.reading.analyses().stream().anyMatch(other -> other.data().baseName().equals(name));
            if (!told) {
                features.add(alone(own, b, a.knows(own) ? State.NOT_COMPARED : State.APPEARED));
            }
        }
        return List.copyOf(features);
    }

    private static boolean isNamed(String name, Collection<GroupAnalysis> groups) {
        return groups.stream().anyMatch(group -> group.data().name().equals(name));
    }

    private FeatureComparison paired(GroupMatching.Pair pair, Optional<GroupContrast> contrast,
                                     Optional<Contrast> finding) {
        GroupFinding findingA = a.findingOf(pair.a());
        GroupFinding findingB = b.findingOf(pair.b());
        String feature = findingA.name().equals(findingB.name()) ? findingA.name() : pair.a().data().baseName();
        return new FeatureComparison(feature, finding.map(ComparedFeatures::state).orElse(State.NOT_COMPARED), finding,
            contrast.flatMap(own -> own.explanationSet(finding.orElseThrow(), judgement)), Optional.of(findingA),
            Optional.of(findingB), seen(a, pair.a().data(), findingA), seen(b, pair.b().data(), findingB),
            foreignOnlyIn(findingA, findingB, b), foreignOnlyIn(findingB, findingA, a),
            contrast.flatMap(own -> new ComparisonSteps(a.name, b.name, judgement).of(own, finding.orElseThrow())));
    }

    private static State state(Contrast contrast) {
        if (contrast.elements().stream().allMatch(element -> element.verdict() == Contrast.Word.EQUIVALENT)) {
            return State.UNCHANGED;
        }
        return GroupContrast.isFlagged(contrast) ? State.CHANGED : State.UNDECIDED;
    }

    /** A group that only one sample has, or that cannot be compared with its counterpart. */
    private FeatureComparison alone(GroupAnalysis own, ReadSample sample, State state) {
        boolean ofA = sample == a;
        ReadSample other = ofA ? b : a;
        GroupFinding finding = sample.findingOf(own);
        Optional<Presence> here = seen(sample, own.data(), finding);
        Optional<Presence> there = state == State.NOT_COMPARED ? Optional.empty()
            : here.flatMap(presence -> presence(0, other));
        return new FeatureComparison(finding.name(), state, Optional.empty(), Optional.empty(),
            ofA ? Optional.of(finding) : Optional.empty(), ofA ? Optional.empty() : Optional.of(finding),
            ofA ? here : there, ofA ? there : here, List.of(), List.of(), Optional.empty());
    }

    private static Optional<Presence> seen(ReadSample sample, GroupData data, GroupFinding finding) {
        return finding.by() != GroupBy.FEATURE || data.sessionsAreUnits() ? Optional.empty()
            : presence(finding.particles().size(), sample);
    }

    /** Empty where particles are not told apart by name. */
    private static Optional<Presence> presence(int particles, ReadSample sample) {
        int all = sample.answer.particleCount();
        boolean unnamed = sample.reading.sample().spotsIndependent() || sample.answer.groups().stream()
            .anyMatch(group -> group.particles().contains(GroupKey.UNNAMED_PARTICLE));
        if (unnamed || all == 0) {
            return Optional.empty();
        }
        ScoreInterval share = ScoreInterval.of((double) particles / all, all, 0, 0, 0.95);
        return Optional.of(new Presence(particles, all, Math.max(share.low(), 0), Math.min(share.high(), 1)));
    }

    /** Foreign elements found here and not there, but for those the other sample has in its nominal or excludes. */
    private static List<ForeignElement> foreignOnlyIn(GroupFinding here, GroupFinding there, ReadSample sampleThere) {
        return here.foreign().stream().filter(ForeignElement::present)
            .filter(found -> !isKnownTo(sampleThere, found.element()))
            .filter(found -> there.foreign().stream().filter(ForeignElement::present)
                .noneMatch(other -> other.element().equals(found.element())))
            .toList();
    }

    private static boolean isKnownTo(ReadSample sample, Element element) {
        return sample.reading.nominal().elements().contains(element)
            || sample.reading.sample().excludedElements().contains(element);
    }
}
