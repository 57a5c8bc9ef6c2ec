package surfeit.intake;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import surfeit.element.Spelling;
import surfeit.spot.Spot;

/**
 * Decides what stands between two cells: the stated delimiter, else that of a {@code sep=;} line, else the one that
 * splits the header into most columns that mean something.
 *
 * @param skipsFirstRow true where the first row is a {@code sep=} line
 */
record DelimiterChoice(char delimiter, boolean skipsFirstRow) {
    private static final Pattern SEP_LINE = Pattern.compile("\"?sep=(.)\\1*\"?[,;\t| ]*", Pattern.CASE_INSENSITIVE);
    private static final int SAMPLE = 1 << 16;
    /** Wide limits: what is too large is told by the reading itself. */
    private static final IntakeLimits SAMPLE_LIMITS = new IntakeLimits(SAMPLE, Spot.ELEMENTS_MAX, 200, SAMPLE, 10_000);
    /** More than any row has columns, so that a header wins over a title above it. */
    private static final int COMPLETE = 1 << 18;
    /** As above, where elements stand one below the other. */
    private static final int TURNED = 1 << 17;

    static DelimiterChoice of(Reader text, StatedDialect stated) throws IOException {
        char[] sample = new char[SAMPLE];
        int length = 0;
        for (int read = 0; read >= 0 && length < SAMPLE; read = text.read(sample, length, SAMPLE - length)) {
            length += read;
        }
        String start = new String(sample, 0, length);
        int end = 0;
        while (end < length && sample[end] != '\n' && sample[end] != '\r') {
            end++;
        }
        Matcher sep = SEP_LINE.matcher(start.substring(0, end));
        boolean hasSepLine = sep.matches();
        if (stated.delimiter().isPresent()) {
            return new DelimiterChoice(stated.delimiter().get(), hasSepLine);
        }
        if (hasSepLine) {
            char named = sep.group(1).charAt(0);
            if (CsvDialect.DELIMITERS.indexOf(named) < 0) {
                throw Refusal.expected(FaultCode.UNREADABLE_TABLE, "the delimiter , ; tab or | in the sep= line",
                    Spelling.quoted(sep.group(1)));
            }
            return new DelimiterChoice(named, true);
        }
        return new DelimiterChoice(ofHeader(start), false);
    }

    private static char ofHeader(String start) {
        char best = ',';
        int most = 0;
        boolean tied = false;
        for (char candidate : CsvDialect.DELIMITERS.toCharArray()) {
            int score = score(start, candidate);
            if (score > most) {
                best = candidate;
                most = score;
                tied = false;
            } else if (score > 1 && score == most) {
                tied = true;
            }
        }
        if (tied) {
            throw Refusal.expected(FaultCode.UNREADABLE_TABLE, "one delimiter of , ; tab and |",
                "a header that two of them split equally well; state the delimiter");
        }
        return best;
    }

    /**
     * How many columns of the header mean something when the text is split by a delimiter: of a row that names spots and
     * elements, which wins over any other, else of a turned table, else of the first row; two at most where only rows below
     * mean anything.
     */
    private static int score(String start, char delimiter) {
        int score = 0;
        List<CsvRow> seen = new ArrayList<>();
        try (CsvRows rows = new CsvRows(new StringReader(start), delimiter, SAMPLE_LIMITS)) {
            for (int i = 0; i <= HeaderSearch.ROWS_MAX; i++) {
                Optional<CsvRow> row = rows.next();
                if (row.isEmpty()) {
                    return turned(seen, score);
                }
                seen.add(row.get());
                int found = meaningful(row.get().cells());
                if (TableHeader.isComplete(row.get().cells())) {
                    return COMPLETE + found;
                }
                score = i == 0 ? found : Math.max(score, Math.min(found, 2));
            }
            return turned(seen, score);
        } catch (CsvRows.BrokenTableException | IOException e) {
            return turned(seen, score);
        }
    }

    private static int turned(List<CsvRow> rows, int otherwise) {
        return TurnedRows.begin(rows) ? TURNED + rows.stream().mapToInt(row -> row.cells().size()).max().orElse(0)
            : otherwise;
    }

    /** How many cells are headers of fields or elements. */
    static int meaningful(List<String> cells) {
        int count = 0;
        for (String cell : cells) {
            ColumnMeaning meaning = ColumnReader.read(cell);
            count += meaning instanceof ColumnMeaning.Other || meaning instanceof ColumnMeaning.Nameless ? 0 : 1;
        }
        return count;
    }
}
