package surfeit.report;

import java.util.List;

/** A piece of a report, free of markup: text, a list, or a table. */
public sealed interface ReportBlock {

    /** Running text. */
    record Paragraph(String text) implements ReportBlock {
    }

    /** A list of sentences. */
    record Items(List<Item> items) implements ReportBlock {
        public Items {
            items = List.copyOf(items);
        }

        /** Items without a name in front. */
        public static Items of(List<String> texts) {
            return new Items(texts.stream().map(text -> new Item("", text)).toList());
        }
    }

    /**
     * One item.
     *
     * @param lead what it is about, with which the text begins; empty where it begins with none
     * @param text the whole of it
     */
    record Item(String lead, String text) {
        public Item {
            if (!text.startsWith(lead)) {
                throw new IllegalArgumentException("Expected a text that begins with \"" + lead + "\", got \"" + text
                    + "\".");
            }
        }
    }

    /** Rows of cells under headings; every row has one cell per column. */
    record Table(List<Column> columns, List<List<String>> rows) implements ReportBlock {
        public Table {
            columns = List.copyOf(columns);
            rows = List.copyOf(rows);
            for (List<String> row : rows) {
                if (row.size() != columns.size()) {
                    throw new IllegalArgumentException("A row of this table has " + columns.size() + " cells, got "
                        + row.size() + ".");
                }
            }
        }
    }

    /** A column of a table. */
    record Column(String heading, Kind kind) {
    }

    /** What the cells of a column hold. */
    enum Kind {
        /** What the row belongs to; equal in rows that belong together. */
        GROUP,
        /** A few words or numbers. */
        SHORT,
        /** A verdict, with its word in front. */
        VERDICT,
        /** Sentences. */
        PROSE
    }
}
