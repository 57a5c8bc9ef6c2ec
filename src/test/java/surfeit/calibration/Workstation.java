package surfeit.calibration;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.Basis;
import surfeit.composition.Closure;
import surfeit.composition.Percent;
import surfeit.element.Element;
import surfeit.spot.Conditions;
import surfeit.spot.ReferencePiece;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/**
 * Writes a spot as a workstation's table does: atomic or mass percent that add up to 100, so many decimals.
 *
 * @param decimals     digits after the point of a percentage
 * @param limitPercent an element that reads below it is written {@code <limit} and left out of the 100 %
 */
record Workstation(List<Element> elements, Basis basis, int decimals, OptionalDouble limitPercent) {

    /** Where a spot lies; the names are the lab's. */
    record Place(String label, Optional<String> particle, Optional<String> feature, Optional<String> session,
                 Optional<ReferencePiece> piece) {
    }

    /**
     * @param parts         atomic parts, not closed
     * @param relativeSigma stated standard uncertainty of every element over its value, if any
     */
    Spot spot(Place place, double[] parts, OptionalDouble relativeSigma) {
        double[] closed = Closure.convert(parts, elements, Basis.ATOMIC, basis);
        boolean[] below = new boolean[closed.length];
        double listed = 0;
        for (int i = 0; i < closed.length; i++) {
            below[i] = limitPercent.isPresent() && closed[i] * 100 < limitPercent.getAsDouble();
            listed += below[i] ? 0 : closed[i];
        }
        Map<Element, ReportedValue> values = new LinkedHashMap<>();
        for (int i = 0; i < closed.length; i++) {
            values.put(elements.get(i), below[i] ? belowLimit() : measured(closed[i] / listed, relativeSigma));
        }
        return new Spot(place.label, place.particle, place.feature, place.session, Optional.empty(), Conditions.UNKNOWN,
            place.piece, basis, values);
    }

    private ReportedValue belowLimit() {
        BigDecimal limit = BigDecimal.valueOf(limitPercent.getAsDouble());
        return new ReportedValue.BelowLimit(Percent.toFraction(limit), "<" + limit.toPlainString());
    }

    private ReportedValue measured(double fraction, OptionalDouble relativeSigma) {
        long digits = Math.round(fraction * 100 * Math.pow(10, decimals));
        BigDecimal percent = BigDecimal.valueOf(digits, decimals);
        double read = Percent.toFraction(percent);
        OptionalDouble sigma = relativeSigma.isPresent()
            ? OptionalDouble.of(Math.abs(read) * relativeSigma.getAsDouble()) : OptionalDouble.empty();
        return new ReportedValue.Measured(read, percent.toPlainString(), sigma, Optional.empty(),
            OptionalDouble.empty(), Optional.empty());
    }
}
