package surfeit.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.Contrast.ElementContrast;
import surfeit.segregation.answer.Contrast.Word;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Scope;

/** One group against another in sentences to be read aloud. */
final class ContrastWords {
    /** Then the linear difference counts too, and equivalence is not offered. */
    private static final String LARGE_BESIDE_SHARE = "no difference is shown; with an error this large beside its share an "
        + "element is not called equivalent.";

    private final Contrast contrast;
    private final NominalFractions nominal;
    private final VerdictWords verdicts;
    private final Signs signs;

    ContrastWords(Contrast contrast, NominalFractions nominal, double margin, Signs signs) {
        this.contrast = contrast;
        this.nominal = nominal;
        this.verdicts = new VerdictWords(margin, signs);
        this.signs = signs;
    }

    /**
     * {@code dark patch against matrix: Cu higher, odds x3.1 (2.2 to 4.4), Ag lower with it, on the same 4 particles.}
     */
    String text() {
        List<ElementContrast> elements = contrast.elements();
        boolean binary = elements.size() == 2;
        List<ElementContrast> spoken = binary ? List.of(leading()) : elements;
        List<String> clauses = new ArrayList<>();
        spoken.stream().filter(ContrastWords::isFlagged)
            .forEach(element -> clauses.add(clause(element) + (binary ? other(element) : "")));
        List<ElementContrast> equivalent = spoken.stream().filter(e -> e.verdict() == Word.EQUIVALENT).toList();
        if (!equivalent.isEmpty()) {
            clauses.add(equivalence(equivalent));
        }
        spoken.stream().filter(e -> e.verdict() == Word.INCONCLUSIVE).forEach(element -> clauses.add(clause(element)));
        return contrast.groupA() + " against " + contrast.groupB() + ": " + String.join("; ", clauses)
            + (clauses.size() > 1 ? "; " : ", ") + basis() + "." + howSure(spoken) + reasons(spoken)
            + contrast.note().map(note -> " " + Listing.sentence(note)).orElse("");
    }

    private ElementContrast leading() {
        return contrast.elements().stream()
            .min(Comparator.comparingDouble((ElementContrast e) -> nominalOf(e.element()))
                .thenComparing(e -> e.verdict() != Word.HIGHER))
            .orElseThrow();
    }

    private double nominalOf(Element element) {
        int index = nominal.elements().indexOf(element);
        return index < 0 ? 0 : nominal.middle(index);
    }

    private String clause(ElementContrast element) {
        return element.element() + " " + element.verdict().word() + ", " + size(element);
    }

    private String equivalence(List<ElementContrast> equivalent) {
        String shown = " equivalent (shown to lie within " + verdicts.margin() + ")";
        return Listing.and(equivalent.stream().map(element -> element.element().symbol()).toList()) + shown
            + (equivalent.size() == 1 ? ", " + size(equivalent.get(0)) : "");
    }

    private String size(ElementContrast element) {
        return element.oddsRatio()
            .map(odds -> "odds " + Digits.factor(odds, signs))
            .orElseGet(() -> "difference " + Digits.atomicPercentInterval(element.difference().value(),
                element.difference().low(), element.difference().high()));
    }

    private String other(ElementContrast lead) {
        return contrast.elements().stream().filter(element -> element != lead)
            .map(element -> ", " + element.element() + " " + element.verdict().word() + " with it")
            .findFirst().orElse("");
    }

    private String basis() {
        String particles = Listing.count(contrast.commonParticles().size(), "particle");
        String basis = contrast.paired() ? "on the same " + particles : "compared as separate sets of particles";
        String leftOut = contrast.leftOut().isEmpty() ? ""
            : ", " + Listing.and(contrast.leftOut()) + " left out for having only one of the two";
        return basis + (contrast.scope() == Scope.PARTICLES ? "" : ", for these particles only") + leftOut;
    }

    private static String howSure(List<ElementContrast> spoken) {
        List<ElementContrast> flagged = spoken.stream().filter(ContrastWords::isFlagged).toList();
        OptionalDouble weakest = flagged.stream().flatMapToDouble(element -> element.pAdjusted().stream()).max();
        if (weakest.isEmpty()) {
            return "";
        }
        return " " + (flagged.size() == 1 ? Confidence.ofFlag(weakest.getAsDouble())
            : Confidence.ofWeakestFlag(weakest.getAsDouble()));
    }

    /** Why elements are inconclusive, reason by reason; symbols only where there are several elements to tell apart. */
    private static String reasons(List<ElementContrast> spoken) {
        StringBuilder text = new StringBuilder();
        for (Reason reason : Reason.values()) {
            List<ElementContrast> affected = spoken.stream()
                .filter(element -> element.verdict() == Word.INCONCLUSIVE)
                .filter(element -> element.reason().equals(Optional.of(reason))).toList();
            boolean between = reason == Reason.BETWEEN;
            append(text, affected.stream().filter(e -> !between || isOnLogit(e)).toList(), words(reason), spoken);
            append(text, affected.stream().filter(e -> between && !isOnLogit(e)).toList(), LARGE_BESIDE_SHARE, spoken);
        }
        return text.toString();
    }

    private static boolean isOnLogit(ElementContrast element) {
        return element.scale().equals("logit");
    }

    private static void append(StringBuilder text, List<ElementContrast> affected, String words,
                               List<ElementContrast> spoken) {
        if (!affected.isEmpty()) {
            String named = Listing.and(affected.stream().map(e -> e.element().symbol()).toList()) + ": " + words;
            text.append(' ').append(spoken.size() == 1 ? Listing.capitalised(words) : named);
        }
    }

    private static String words(Reason reason) {
        return switch (reason) {
            case CALIBRATION -> "the spots agree, but the calibration error that is left could make the difference.";
            case SCATTER -> "the scatter is too large to tell.";
            case CALIBRATION_AND_SCATTER -> "the scatter is too large, and the calibration error that is left could "
                + "make the difference.";
            case BETWEEN -> "the difference lies near the margin.";
            case LIMIT_ABOVE_NOMINAL -> "the values lie below their limits.";
            case NO_REPEAT_AND_NO_SIGMA -> "one side has neither a repeat nor a stated uncertainty.";
        };
    }

    private static boolean isFlagged(ElementContrast element) {
        return element.verdict() == Word.HIGHER || element.verdict() == Word.LOWER;
    }
}
