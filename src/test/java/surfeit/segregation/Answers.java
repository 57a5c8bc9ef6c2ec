package surfeit.segregation;

import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Nominal;
import surfeit.element.Element;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Verdict;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Judgement;
import surfeit.spot.Sample;

/** Samples of the packaged alloys, interpreted through the public entry, and what the answers say of one element. */
public final class Answers {
    public static final double LIMIT = MethodSettings.DEFAULT_DETECTION_LIMIT_MASS_FRACTION;

    private Answers() {
    }

    /** A sample of this nominal; excluded elements are symbols parted by blanks. */
    public static Sample sample(Nominal nominal, AccuracyClass accuracy, String excluded) {
        return sample(nominal, accuracy, excluded, Judgement.DEFAULT);
    }

    public static Sample sample(Nominal nominal, AccuracyClass accuracy, String excluded, Judgement judgement) {
        Sample plain = Sample.of(Optional.empty(), Optional.of(nominal));
        Set<Element> left = new TreeSet<>();
        for (String symbol : excluded.strip().split("\\s+")) {
            if (!symbol.isEmpty()) {
                left.add(Element.of(symbol));
            }
        }
        return new Sample(plain.alloy(), plain.nominal(), left, accuracy, plain.form(), plain.geometry(), plain.coating(),
            plain.mount(), judgement, plain.preparation(), plain.diffractionPhases(), "", false);
    }

    public static Nominal alloy(String id) {
        return AlloyCatalogue.packaged().require(id).nominal();
    }

    public static Interpretation of(String alloy, AccuracyClass accuracy, String excluded, InventedTable spots) {
        return of(alloy(alloy), accuracy, excluded, spots);
    }

    public static Interpretation of(Nominal nominal, AccuracyClass accuracy, String excluded, InventedTable spots) {
        return new Interpreter().interpret(sample(nominal, accuracy, excluded), nominal, spots.source(), GroupBy.FEATURE,
            LIMIT);
    }

    public static GroupFinding only(Interpretation answer) {
        if (answer.groups().size() != 1) {
            throw new IllegalArgumentException("Expected one group, got " + answer.groups().size() + ".");
        }
        return answer.groups().get(0);
    }

    public static ElementFinding element(GroupFinding group, String symbol) {
        return group.elements().stream().filter(finding -> finding.element().symbol().equals(symbol)).findFirst()
            .orElseThrow();
    }

    public static Outcome outcome(GroupFinding group, String symbol) {
        return element(group, symbol).outcome();
    }

    public static Verdict verdict(GroupFinding group, String symbol) {
        return outcome(group, symbol).verdict();
    }
}
