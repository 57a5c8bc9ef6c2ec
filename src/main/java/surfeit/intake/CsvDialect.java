package surfeit.intake;

import java.nio.charset.Charset;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;
import surfeit.composition.Basis;

/**
 * How one table is written, decided once for the whole file and echoed with its report.
 *
 * @param charset   characters
 * @param delimiter what stands between two cells
 * @param decimal   decimal mark; absent where no number of the file has one
 * @param timeZone  zone of local times, where one was stated
 * @param unit      unit of all values, where the header or the sender states one for all
 * @param layout    which row or column is what, once the header is read
 * @param decidedBy who decided characters, delimiter and decimal mark
 */
public record CsvDialect(Charset charset, char delimiter, Optional<Character> decimal, Optional<ZoneId> timeZone,
                         Optional<Basis> unit, Optional<Layout> layout, DecidedBy decidedBy) {
    /** Delimiters a table may have. */
    public static final String DELIMITERS = ",;\t|";

    /** What stands in a row, and what in a column. */
    public enum Layout {
        /** One spot a row. */
        WIDE("wide"),
        /** One element of one spot a row. */
        LONG("long"),
        /** As long, with the label in the first row of each spot alone. */
        MERGED("merged"),
        /** One spot a column, one element a row. */
        TURNED("turned");

        private final String words;

        Layout(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Whether the dialect was read off the file or stated by the sender. */
    public enum DecidedBy {
        DETECTED("detected"), STATED("stated"), STATED_IN_PART("stated in part");

        private final String words;

        DecidedBy(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        static DecidedBy of(StatedDialect stated) {
            int count = (stated.charset().isPresent() ? 1 : 0) + (stated.delimiter().isPresent() ? 1 : 0)
                + (stated.decimal().isPresent() ? 1 : 0);
            return count == 0 ? DETECTED : count == 3 ? STATED : STATED_IN_PART;
        }
    }

    /** The characters' name as it is echoed: {@code utf-8}, {@code windows-1252}. */
    public String charsetName() {
        return charset.name().toLowerCase(Locale.ROOT);
    }

    /** The delimiter as it is echoed: {@code ;} or {@code tab}. */
    public String delimiterName() {
        return delimiterName(delimiter);
    }

    static String delimiterName(char delimiter) {
        return delimiter == '\t' ? "tab" : String.valueOf(delimiter);
    }
}
