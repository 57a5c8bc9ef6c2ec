package surfeit.intake;

import java.util.OptionalLong;

/** Where in an upload something stands. */
public sealed interface Place {

    /**
     * One cell of a table. Its value is cut to {@link #SHOWN_MAX} characters.
     *
     * @param line   physical line on which the row begins, from 1; a {@code sep=} line and the header count
     * @param column from 1
     */
    record Cell(long line, int column, String columnName, String value) implements Place {
        public Cell {
            columnName = cut(columnName);
            value = cut(value);
        }
    }

    /** One row of a table, by the physical line on which it begins. */
    record Row(long line) implements Place {
    }

    /**
     * A place in a JSON document.
     *
     * @param line    line of the document, where there is one document a line
     * @param pointer RFC 6901 pointer
     * @param value   text found there, empty where there is none
     */
    record Pointer(OptionalLong line, String pointer, String value) implements Place {
        public Pointer {
            value = cut(value);
        }
    }

    /** Most characters of an upload's own text that a fault repeats. Judgement: a line on a screen. */
    int SHOWN_MAX = 100;

    private static String cut(String text) {
        return text.length() <= SHOWN_MAX ? text : text.substring(0, SHOWN_MAX) + "…";
    }
}
