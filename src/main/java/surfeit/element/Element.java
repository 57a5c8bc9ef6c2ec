package surfeit.element;

import java.util.OptionalDouble;

/**
 * One chemical element as the lab names it: symbol, atomic number, standard atomic weight, density near 20 °C.
 *
 * <p>Gases carry the density of the gas, not of a solid. Two elements are equal when their atomic number is; ordered
 * by atomic number. Immutable, thread-safe.
 * Sources: the {@code source} column of {@code shared/reference/elements.csv}.
 *
 * @param atomicWeight      standard atomic weight in g/mol; the mass number where there is no standard weight
 * @param weightUncertainty half width within which the abridged weight holds for any normal material, g/mol, as
 *                          published beside it; not a standard uncertainty, and absent without a standard weight
 * @param density           density in g/cm³, absent where the packaged table has none
 */
public record Element(int atomicNumber, String symbol, String name, double atomicWeight,
                      OptionalDouble weightUncertainty, OptionalDouble density, boolean gasAtRoomTemperature)
    implements Comparable<Element> {

    public Element {
        if (atomicNumber < 1 || atomicNumber > 118) {
            throw new IllegalArgumentException("Atomic number " + atomicNumber + " is outside 1 to 118.");
        }
        requirePositive("Atomic weight of " + symbol + " (g/mol)", atomicWeight);
        weightUncertainty.ifPresent(value -> requirePositive("Weight uncertainty of " + symbol + " (g/mol)", value));
        density.ifPresent(value -> requirePositive("Density of " + symbol + " (g/cm3)", value));
    }

    /** The element with this symbol, in the packaged table. @throws UnknownElementException where there is none */
    public static Element of(String symbol) {
        return ElementTable.standard().bySymbol(symbol)
            .orElseThrow(() -> new UnknownElementException(symbol, ElementTable.standard().nearestSymbol(symbol)));
    }

    @Override
    public int compareTo(Element other) {
        return Integer.compare(atomicNumber, other.atomicNumber);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Element element && element.atomicNumber == atomicNumber;
    }

    @Override
    public int hashCode() {
        return atomicNumber;
    }

    @Override
    public String toString() {
        return symbol;
    }

    private static void requirePositive(String what, double value) {
        if (!(value > 0 && Double.isFinite(value))) {
            throw new IllegalArgumentException(what + " is a finite number above 0, got " + value + ".");
        }
    }
}
