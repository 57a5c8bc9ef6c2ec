package surfeit.element;

import java.util.OptionalDouble;

/**
 * One chemical element as the lab names it: symbol, atomic number, standard atomic weight, density near 20 °C.
 *
 * <p>The atomic weight is in g/mol, its standard uncertainty too; the density is in g/cm³ and absent where the
 * packaged table has none. Gases carry the density of the gas. Ordered by atomic number. Immutable, thread-safe.
 * Sources: the {@code source} column of {@code shared/reference/elements.csv}.
 */
public record Element(int atomicNumber, String symbol, String name, double atomicWeight, OptionalDouble weightUncertainty,
                      OptionalDouble density, boolean gasAtRoomTemperature) implements Comparable<Element> {

    public Element {
        if (atomicNumber < 1 || atomicNumber > 118) {
            throw new IllegalArgumentException("Atomic number " + atomicNumber + " is outside 1 to 118.");
        }
        if (!(atomicWeight > 0)) {
            throw new IllegalArgumentException("Atomic weight of " + symbol + " is " + atomicWeight + ", must be above 0 g/mol.");
        }
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
}
