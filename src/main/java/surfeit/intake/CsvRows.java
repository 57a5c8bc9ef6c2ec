package surfeit.intake;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The rows of a table, one by one, blank ones left out; lines end with LF, CR or both.
 *
 * <p>Quotes are double quotes at the start of a cell; text after a closing quote and a quote that is never closed end
 * the reading, since nobody can tell where the rows after it begin. Not thread-safe.
 */
final class CsvRows implements AutoCloseable {
    private static final int BUFFER = 1 << 20;

    private final CloseableIterator<CsvRow> rows;
    private final CellCollector cells;

    CsvRows(Reader reader, char delimiter, IntakeLimits limits) {
        cells = new CellCollector(limits);
        rows = CsvReader.builder().fieldSeparator(delimiter).quoteCharacter('"').skipEmptyLines(false)
            .extraFieldStrategy(FieldMismatchStrategy.IGNORE).missingFieldStrategy(FieldMismatchStrategy.IGNORE)
            .allowUnclosedQuote(false).maxBufferSize(Math.max(BUFFER, 2 * limits.cellLengthMax() + 2))
            .build(cells, reader).iterator();
    }

    /** The next row that is not blank. @throws BrokenTableException where rows cannot be told apart any more */
    Optional<CsvRow> next() {
        try {
            while (rows.hasNext()) {
                CsvRow row = rows.next();
                if (!row.isBlank()) {
                    return Optional.of(row);
                }
            }
        } catch (CsvParseException e) {
            throw cells.broken(e);
        } catch (UncheckedIOException e) {
            throw cells.unreadable(e);
        }
        return Optional.empty();
    }

    @Override
    public void close() throws IOException {
        rows.close();
    }

    /** Rows end here: what follows cannot be read as cells. */
    static final class BrokenTableException extends RuntimeException {
        private final transient Fault fault;

        BrokenTableException(Fault fault) {
            super(fault.detail(), null, false, false);
            this.fault = fault;
        }

        Fault fault() {
            return fault;
        }
    }

    /** Gathers the cells of one row, and knows where it stands when the reader gives up. */
    private static final class CellCollector extends AbstractBaseCsvCallbackHandler<CsvRow> {
        private final IntakeLimits limits;
        private String[] row = new String[16];
        private long line;
        private int count;

        CellCollector(IntakeLimits limits) {
            this.limits = limits;
        }

        @Override
        protected void handleBegin(long startingLineNumber) {
            line = startingLineNumber;
            count = 0;
        }

        @Override
        protected void handleField(int index, char[] buffer, int offset, int length, boolean quoted) {
            if (length > limits.cellLengthMax()) {
                throw tooLarge(index + 1, "Expected a cell of at most " + limits.cellLengthMax() + " characters, found "
                    + length + "; is a quote left open?", IntakeLimits.CELL_SETTING);
            }
            if (index >= limits.columnsMax()) {
                throw tooLarge(index + 1, "Expected at most " + limits.columnsMax() + " columns, found more.",
                    IntakeLimits.COLUMNS_SETTING);
            }
            if (index == row.length) {
                row = Arrays.copyOf(row, 2 * index);
            }
            row[index] = new String(buffer, offset, length);
            count = index + 1;
        }

        @Override
        protected CsvRow buildRecord() {
            return new CsvRow(line, List.of(count == row.length ? row : Arrays.copyOf(row, count)));
        }

        private BrokenTableException tooLarge(int column, String detail, String setting) {
            return new BrokenTableException(new Fault(FaultCode.UPLOAD_TOO_LARGE, detail,
                new Place.Cell(line, column, "", ""), Optional.of(setting)));
        }

        private BrokenTableException unreadableAt(int column, String detail) {
            return new BrokenTableException(
                new Fault(FaultCode.UNREADABLE_TABLE, detail, new Place.Cell(line, column, "", "")));
        }

        BrokenTableException broken(CsvParseException e) {
            Throwable cause = e;
            while (cause instanceof CsvParseException && cause.getCause() instanceof RuntimeException inner) {
                cause = inner;
            }
            if (cause instanceof BrokenTableException known) {
                return known;
            }
            String message = String.valueOf(cause.getMessage());
            if (message.contains("Unclosed quote")) {
                return unreadableAt(count + 1,
                    "Expected a closing quote, found the end of the file; the cell began with a quote.");
            }
            return message.contains("closing quote")
                ? unreadableAt(count + 1, "Expected the delimiter or the end of the line after a closing quote, found"
                    + " more text; a quote inside quotes is written twice.")
                : tooLarge(count + 1, "Expected a cell of at most " + limits.cellLengthMax()
                    + " characters; is a quote left open?", IntakeLimits.CELL_SETTING);
        }

        BrokenTableException unreadable(UncheckedIOException e) {
            if (e.getCause() instanceof CharacterCodingException) {
                return unreadableAt(count + 1, "Expected characters of the stated charset, found bytes that are none of"
                    + " it, in or after this row.");
            }
            throw e;
        }
    }
}
