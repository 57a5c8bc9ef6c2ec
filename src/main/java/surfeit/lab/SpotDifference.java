package surfeit.lab;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.composition.Nominal;
import surfeit.composition.NominalPart;
import surfeit.composition.NominalText;
import surfeit.composition.Percent;
import surfeit.element.Element;
import surfeit.spot.Conditions;
import surfeit.spot.Counts;
import surfeit.spot.Position;
import surfeit.spot.ReferencePiece;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/**
 * What differs between two statements about one spot, by value and not by how a value was printed.
 *
 * <p>{@code 62.40} and {@code 62,4} are the same; 62.4 at% and 62.4 wt% are not; an empty cell is the same as no cell.
 */
final class SpotDifference {
    /**
     * Relative difference up to which two numbers count as the same: the fraction of one printed percent value can
     * differ in its last bit with the form it came in, while no table prints twelve digits.
     */
    private static final double SAME = 1e-12;
    private static final ReportedValue NOT_REPORTED = new ReportedValue.NotReported();

    private final List<String> differences = new ArrayList<>();

    private SpotDifference() {
    }

    /** Each difference in words, from the first to the second; empty where both say the same. */
    static List<String> between(Spot from, Spot to) {
        SpotDifference difference = new SpotDifference();
        difference.compare(from, to);
        return difference.differences;
    }

    static String inWords(Spot from, Spot to) {
        List<String> differences = between(from, to);
        return differences.isEmpty() ? "the same values, printed differently" : String.join("; ", differences);
    }

    private void compare(Spot from, Spot to) {
        texts("session", from.session(), to.session());
        texts("label", Optional.of(from.label()), Optional.of(to.label()));
        texts("acquired time", from.key().acquired().map(Object::toString), to.key().acquired().map(Object::toString));
        texts("particle", from.particle(), to.particle());
        texts("feature", from.feature(), to.feature());
        conditions(from.conditions(), to.conditions());
        references(from.reference(), to.reference());
        texts("unit", Optional.of(from.basis().unit()), Optional.of(to.basis().unit()));
        Set<Element> elements = new LinkedHashSet<>(from.values().keySet());
        elements.addAll(to.values().keySet());
        for (Element element : elements) {
            values(element.symbol(), from.values().getOrDefault(element, NOT_REPORTED),
                to.values().getOrDefault(element, NOT_REPORTED));
        }
    }

    private void conditions(Conditions from, Conditions to) {
        numbers("beam energy", "keV", from.beamEnergyKev(), to.beamEnergyKev());
        numbers("live time", "s", from.liveTimeS(), to.liveTimeS());
        numbers("feature size", "um", from.featureSizeUm(), to.featureSizeUm());
        percents("raw total", from.rawTotal(), to.rawTotal());
        texts("position", from.position().map(Position::words), to.position().map(Position::words));
        numbers("tilt", "deg", from.tiltDeg(), to.tiltDeg());
    }

    private void values(String symbol, ReportedValue from, ReportedValue to) {
        boolean same = from.getClass() == to.getClass() && sameNumber(main(from), main(to));
        if (!same) {
            differences.add(symbol + " " + inWords(from) + " -> " + inWords(to));
        }
        if (from instanceof ReportedValue.Measured before && to instanceof ReportedValue.Measured after) {
            percents(symbol + " uncertainty", before.uncertainty(), after.uncertainty());
            numbers(symbol + " net counts", "", net(before), net(after));
            numbers(symbol + " background counts", "", background(before), background(after));
            percents(symbol + " limit", before.limit(), after.limit());
            texts(symbol + " line", before.line(), after.line());
        }
    }

    private static OptionalDouble main(ReportedValue value) {
        if (value instanceof ReportedValue.Measured measured) {
            return OptionalDouble.of(measured.fraction());
        }
        if (value instanceof ReportedValue.BelowLimit below) {
            return OptionalDouble.of(below.limitFraction());
        }
        return value instanceof ReportedValue.NotDetected absent ? absent.limitFraction() : OptionalDouble.empty();
    }

    private static String inWords(ReportedValue value) {
        if (value instanceof ReportedValue.NotReported) {
            return "not reported";
        }
        String limit = value instanceof ReportedValue.NotDetected absent && absent.limitFraction().isPresent()
            ? " (limit " + percent(absent.limitFraction().getAsDouble()) + " %)" : "";
        return "\"" + value.asReported() + "\"" + limit;
    }

    private static String inWords(Nominal composition) {
        return NominalText.format(composition) + " " + composition.basis().unit();
    }

    private static OptionalDouble net(ReportedValue.Measured value) {
        return value.counts().map(Counts::net).map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    private static OptionalDouble background(ReportedValue.Measured value) {
        return value.counts().map(Counts::background).map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    private void references(Optional<ReferencePiece> from, Optional<ReferencePiece> to) {
        texts("role", Optional.of(role(from)), Optional.of(role(to)));
        if (from.isEmpty() || to.isEmpty()) {
            return;
        }
        texts("same material", Optional.of(String.valueOf(from.get().sameMaterial())),
            Optional.of(String.valueOf(to.get().sameMaterial())));
        if (!sameNominal(from.get().trueComposition(), to.get().trueComposition())) {
            differences.add("true composition " + inWords(from.get().trueComposition()) + " -> "
                + inWords(to.get().trueComposition()));
        }
    }

    private static String role(Optional<ReferencePiece> reference) {
        return reference.isPresent() ? "reference" : "specimen";
    }

    private static boolean sameNominal(Nominal from, Nominal to) {
        if (from.basis() != to.basis() || !from.parts().keySet().equals(to.parts().keySet())) {
            return false;
        }
        for (Map.Entry<Element, NominalPart> part : from.parts().entrySet()) {
            if (!samePart(part.getValue(), to.parts().get(part.getKey()))) {
                return false;
            }
        }
        return true;
    }

    private static boolean samePart(NominalPart from, NominalPart to) {
        if (from instanceof NominalPart.Point a && to instanceof NominalPart.Point b) {
            return sameNumber(a.value(), b.value()) && sameNumber(a.tolerance(), b.tolerance());
        }
        if (from instanceof NominalPart.Range a && to instanceof NominalPart.Range b) {
            return sameNumber(a.low(), b.low()) && sameNumber(a.high(), b.high());
        }
        return from.equals(to);
    }

    private void numbers(String what, String unit, OptionalDouble from, OptionalDouble to) {
        if (!sameNumber(from, to)) {
            differences.add((what + " " + inWords(from) + " -> " + inWords(to) + " " + unit).stripTrailing());
        }
    }

    /** The same of fractions, told in percent as they were sent. */
    private void percents(String what, OptionalDouble from, OptionalDouble to) {
        if (!sameNumber(from, to)) {
            differences.add(what + " " + inPercent(from) + " -> " + inPercent(to));
        }
    }

    private static String inPercent(OptionalDouble fraction) {
        return fraction.isPresent() ? percent(fraction.getAsDouble()) + " %" : "not stated";
    }

    private static String percent(double fraction) {
        return Percent.ofFraction(fraction).toPlainString();
    }

    private void texts(String what, Optional<String> from, Optional<String> to) {
        if (!from.equals(to)) {
            differences.add(what + " " + inWords(from) + " -> " + inWords(to));
        }
    }

    private static String inWords(OptionalDouble number) {
        return number.isPresent() ? String.valueOf(number.getAsDouble()) : "not stated";
    }

    private static String inWords(Optional<String> text) {
        return text.map(word -> "\"" + word + "\"").orElse("not stated");
    }

    private static boolean sameNumber(OptionalDouble from, OptionalDouble to) {
        return from.isPresent() && to.isPresent() ? sameNumber(from.getAsDouble(), to.getAsDouble()) : from.equals(to);
    }

    private static boolean sameNumber(double from, double to) {
        return Math.abs(from - to) <= SAME * Math.max(Math.abs(from), Math.abs(to));
    }
}
