package surfeit.intake;

import java.util.Optional;
import surfeit.composition.Basis;
import surfeit.element.Element;

/** What a column's header says that the column holds. */
sealed interface ColumnMeaning {

    /** A field of the spot. */
    record Field(SpotField field, boolean ownName) implements ColumnMeaning {
    }

    /** The element symbols of a long table. */
    record ElementNames() implements ColumnMeaning {
    }

    /**
     * A number or text of one element, or in a long table of the row's element.
     *
     * @param uLevel how many standard uncertainties the header says, 0 where it says nothing
     * @param line   the X-ray line the header names
     * @param words  what the header says beyond element, unit and line
     */
    record Quantity(Optional<Element> element, Kind kind, Optional<Basis> basis, int uLevel, Optional<String> line,
                    String words) implements ColumnMeaning {
    }

    /** A unit beside something that is no element. */
    record UnknownElement(String text, Optional<String> nearest) implements ColumnMeaning {
    }

    /** Neither a field nor an element. */
    record Other() implements ColumnMeaning {
    }

    /** No name at all. */
    record Nameless() implements ColumnMeaning {
    }

    /** What a column says of its element. */
    enum Kind {
        VALUE("value"), UNCERTAINTY("u"), NET_COUNTS("net counts"), BACKGROUND_COUNTS("background counts"),
            LIMIT("limit"),
        LINE("line"), UNCLEAR("unclear");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }
}
