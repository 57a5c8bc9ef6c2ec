package surfeit.spot;

import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.Iterator;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;
import java.util.function.Supplier;
import surfeit.element.Element;

/**
 * What one spot reports of its elements, in the order reported: a map of few entries that is searched from its
 * beginning, takes little memory, and can be gone through by number. Immutable, thread-safe.
 */
public final class ReportedValues extends AbstractMap<Element, ReportedValue> {
    private static final Map<Element, ReportedValue> NOTHING = Map.of();

    private final Element[] elements;
    private final ReportedValue[] values;

    private ReportedValues(Element[] elements, ReportedValue[] values) {
        this.elements = elements;
        this.values = values;
    }

    /** The same values in this form. */
    public static ReportedValues of(Map<Element, ReportedValue> reported) {
        return reported instanceof ReportedValues own ? own : new ReportedValues(
            reported.keySet().toArray(Element[]::new), reported.values().toArray(ReportedValue[]::new));
    }

    /** So many values, asked for one after the other: of each its element, then what is reported of it. */
    public static ReportedValues inTurn(int size, Supplier<Element> element, Supplier<ReportedValue> value) {
        Element[] elements = new Element[size];
        ReportedValue[] values = new ReportedValue[size];
        for (int i = 0; i < size; i++) {
            Element next = element.get();
            if (place(elements, i, next) >= 0) {
                throw new IllegalArgumentException("A spot reports each element once, got " + next + " twice.");
            }
            elements[i] = next;
            values[i] = value.get();
        }
        return new ReportedValues(elements, values);
    }

    /** The element reported in this place, from 0. */
    public Element element(int place) {
        return elements[place];
    }

    /** What is reported in this place, from 0. */
    public ReportedValue value(int place) {
        return values[place];
    }

    @Override
    public int size() {
        return elements.length;
    }

    @Override
    public boolean containsKey(Object element) {
        return place(element) >= 0;
    }

    @Override
    public ReportedValue get(Object element) {
        int place = place(element);
        return place >= 0 ? values[place] : NOTHING.get(element);
    }

    /** Where an element is reported, from 0; -1 where it is not. */
    public int place(Object element) {
        return place(elements, elements.length, element);
    }

    /** The same, looked for first in the place where it is likely to be. */
    public int place(Element element, int likely) {
        return likely < elements.length && elements[likely].equals(element) ? likely : place(element);
    }

    private static int place(Element[] elements, int size, Object element) {
        for (int i = 0; i < size; i++) {
            if (elements[i].equals(element)) {
                return i;
            }
        }
        return -1;
    }

    @Override
    public Set<Map.Entry<Element, ReportedValue>> entrySet() {
        return new Entries();
    }

    /** The entries in their order. */
    private final class Entries extends AbstractSet<Map.Entry<Element, ReportedValue>> {
        @Override
        public int size() {
            return elements.length;
        }

        @Override
        public Iterator<Map.Entry<Element, ReportedValue>> iterator() {
            return new Iterator<>() {
                private int next;

                @Override
                public boolean hasNext() {
                    return next < elements.length;
                }

                @Override
                public Map.Entry<Element, ReportedValue> next() {
                    if (!hasNext()) {
                        throw new NoSuchElementException();
                    }
                    Map.Entry<Element, ReportedValue> entry = new SimpleImmutableEntry<>(elements[next], values[next]);
                    next++;
                    return entry;
                }
            };
        }
    }
}
