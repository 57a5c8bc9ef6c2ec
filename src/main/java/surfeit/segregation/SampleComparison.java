package surfeit.segregation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.composition.CompositionException;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.contrast.ComparedFeatures;
import surfeit.segregation.contrast.ComparedSample;
import surfeit.segregation.contrast.ComparisonAnswer;
import surfeit.segregation.contrast.ComparisonCaveats;
import surfeit.segregation.contrast.ContrastSide;
import surfeit.segregation.contrast.FeatureComparison;
import surfeit.segregation.contrast.GroupContrast;
import surfeit.segregation.contrast.GroupMatching;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.nominal.SampleReading;
import surfeit.segregation.sums.ClosedNominal;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Judgement;

/**
 * Compares two samples with each other: as made against treated, lot against lot.
 *
 * <p>Groups of the same name are compared element by element, mean of particle means against mean of particle means on
 * the logit scale (Welch; see {@code ContrastTest}), under a margin and a risk of their own: the smaller of both
 * samples'. The p values of the whole comparison form one family (Holm). The nominals play no part but for their
 * elements: every spot is closed over those that both have.
 *
 * <p>Particles of two samples are different particles, also where their names coincide ("P1" is a name in most tables);
 * only where the lab says that these were the very same ones measured again are they compared pair by pair.
 *
 * <p>The calibration error cancels in part (correlation 0.9, judgement) where both were measured in a session of the
 * same name at the same beam energy and quantified in the same way. A session without a name is no common one. Where it
 * does not cancel and the reference spots of both sessions correct both samples, the corrected numbers are compared and
 * the errors left are taken as independent, which overstates what is common to both.
 *
 * <p>Stateless, thread-safe.
 */
public final class SampleComparison {

    /**
     * The comparison of A with B.
     *
     * @param sameParticles whether particles of the same name are the very same ones measured again
     * @param detectionLimitMassFraction limit taken for "not detected" without a stated limit
     * @throws CompositionException     where the nominals share fewer than two elements, or no spots list two of them
     * @throws IllegalArgumentException for a comparison by particle of particles that are not the same
     */
    public ComparisonAnswer compare(ComparedSample a, ComparedSample b, GroupBy by, boolean sameParticles,
                                    double detectionLimitMassFraction) {
        if (by == GroupBy.PARTICLE && !sameParticles) {
            throw new IllegalArgumentException("Two samples are compared particle by particle only where their "
                + "particles are the very same ones measured again; expected by feature or by sample, got by "
                + "particle.");
        }
        NominalFractions nominalA = ClosedNominal.of(a.nominal(), a.sample());
        NominalFractions nominalB = ClosedNominal.of(b.nominal(), b.sample());
        List<Element> elements = nominalA.elements().stream().filter(nominalB.elements()::contains).toList();
        requireTwo(elements, a, nominalA, b, nominalB);
        SampleReading ownA =
            SampleReading.of(a.sample(), nominalA, a.phases(), a.source(), by, detectionLimitMassFraction);
        SampleReading ownB =
            SampleReading.of(b.sample(), nominalB, b.phases(), b.source(), by, detectionLimitMassFraction);
        SampleReading readA = over(elements, ownA, a, by, detectionLimitMassFraction);
        SampleReading readB = over(elements, ownB, b, by, detectionLimitMassFraction);
        Judgement judgement = strictest(a.sample().judgement(), b.sample().judgement());
        GroupMatching matching = GroupMatching.of(readA.analyses(), readB.analyses());
        List<Optional<GroupContrast>> contrasts = matching.pairs().stream()
            .map(pair -> contrast(pair, a, b, sameParticles, judgement)).toList();
        Interpretation answerA = Interpreter.interpretation(a.nominal(), by, ownA);
        Interpretation answerB = Interpreter.interpretation(b.nominal(), by, ownB);
        List<FeatureComparison> features = new ComparedFeatures(
            new ComparedFeatures.ReadSample(a.name(), ownA, answerA),
            new ComparedFeatures.ReadSample(b.name(), ownB, answerB), judgement).of(matching, contrasts);
        List<Element> onlyInA = without(nominalA.elements(), elements);
        List<Element> onlyInB = without(nominalB.elements(), elements);
        return new ComparisonAnswer(a.name(), b.name(), by, sameParticles, judgement.marginOddsRatio(),
            judgement.alpha(), detectionLimitMassFraction, elements, onlyInA, onlyInB, answerA, answerB, features,
            new ComparisonCaveats(a, b, onlyInA, onlyInB, sameParticles).of(readA, readB, matching, contrasts));
    }

    private static void requireTwo(List<Element> common, ComparedSample a, NominalFractions nominalA, ComparedSample b,
                                   NominalFractions nominalB) {
        if (common.size() < 2) {
            throw new CompositionException(CompositionException.Kind.TOO_FEW_ELEMENTS, "Two samples are compared over "
                + "the elements both nominals have, at least two; got " + nominalA.elements() + " for " + a.name()
                + " and " + nominalB.elements() + " for " + b.name() + ".");
        }
    }

    /** The same spots closed over fewer elements; read again only where that makes a difference. */
    private static SampleReading over(List<Element> elements, SampleReading own, ComparedSample compared, GroupBy by,
                                      double detectionLimitMassFraction) {
        NominalFractions fewer = own.nominal().over(elements);
        return fewer == own.nominal() ? own
            : SampleReading.of(compared.sample(), fewer, compared.source(), by, detectionLimitMassFraction);
    }

    private static Judgement strictest(Judgement a, Judgement b) {
        return new Judgement(Math.min(a.marginOddsRatio(), b.marginOddsRatio()), Math.min(a.alpha(), b.alpha()),
            a.uLevel(), a.referenceCorrelation(), a.spotCentre());
    }

    private static Optional<GroupContrast> contrast(GroupMatching.Pair pair, ComparedSample a, ComparedSample b,
                                                    boolean sameParticles, Judgement judgement) {
        AccuracyClass accuracyA = a.sample().accuracyClass();
        boolean sameRun = pair.nearness() == GroupMatching.Nearness.SAME_RUN && accuracyA == b.sample().accuracyClass();
        boolean corrected = !sameRun && pair.a().referenceUsed() && pair.b().referenceUsed();
        return GroupContrast.of(side(a.name(), pair.a(), corrected), side(b.name(), pair.b(), corrected), sameParticles,
            sameRun, judgement);
    }

    private static ContrastSide side(String name, GroupAnalysis analysis, boolean corrected) {
        return corrected ? ContrastSide.asAnswered(name, analysis) : ContrastSide.asMeasured(name, analysis);
    }

    private static List<Element> without(List<Element> all, List<Element> some) {
        List<Element> rest = new ArrayList<>(all);
        rest.removeAll(some);
        return List.copyOf(rest);
    }
}
