package surfeit.http;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.Basis;
import surfeit.composition.Closure;
import surfeit.element.Element;
import surfeit.http.json.Numbers;
import surfeit.lab.StoredReading;
import surfeit.lab.StoredSpot;
import surfeit.segregation.screening.SpotReading.ElementReading;
import surfeit.spot.ReportedValue;

/**
 * One element of one spot, flat.
 *
 * @param stored       the spot on record
 * @param group        the group it belongs to in the answer by feature
 * @param reading      what it shows of the element
 * @param reported     what was reported of it; empty where the spot does not list it
 * @param massFraction the closed composition of the spot turned to mass fractions
 */
record ResultRow(StoredSpot stored, String group, ElementReading reading, Optional<ReportedValue> reported,
                 double massFraction) {

    /** The rows of one spot, one per element of the nominal. */
    static List<ResultRow> of(StoredReading spot) {
        List<ElementReading> readings = spot.reading().elements();
        if (readings.isEmpty()) {
            return List.of();
        }
        List<Element> elements = readings.stream().map(ElementReading::element).toList();
        double[] mass = Closure.close(readings.stream().mapToDouble(ElementReading::atomicFraction).toArray(),
            Closure.divisors(elements, Basis.ATOMIC, Basis.MASS));
        List<ResultRow> rows = new ArrayList<>();
        for (int i = 0; i < mass.length; i++) {
            rows.add(new ResultRow(spot.stored(), spot.reading().group(), readings.get(i),
                Optional.ofNullable(spot.stored().spot().values().get(elements.get(i))), mass[i]));
        }
        return rows;
    }

    /** The number reported, as a fraction of the unit it was reported in. */
    OptionalDouble reportedPercent() {
        return reported.isPresent() && reported.get() instanceof ReportedValue.Measured measured
            ? OptionalDouble.of(Numbers.stated(measured)) : OptionalDouble.empty();
    }

    OptionalDouble reportedPercentU() {
        return reported.isPresent() && reported.get() instanceof ReportedValue.Measured measured
            && measured.uncertainty().isPresent()
            ? OptionalDouble.of(Numbers.stated(measured.uncertainty().getAsDouble())) : OptionalDouble.empty();
    }

    double nominal() {
        return (reading.nominalLow() + reading.nominalHigh()) / 2;
    }
}
