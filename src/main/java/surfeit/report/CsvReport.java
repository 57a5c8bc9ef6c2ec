package surfeit.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.CharBuffer;
import surfeit.segregation.answer.Interpretation;

/**
 * The answer as flat CSV rows, one per group and element, with full numbers and the unit in each column's name.
 *
 * <p>Comma, quotes where needed, lines ended by CR LF (RFC 4180). Nominal elements that no spot lists have a row with
 * the verdict {@code not_measured}, elements outside the nominal one with {@code foreign} or {@code foreign_not_shown}
 * and their share of everything reported. An absent number, and an end without a bound, is an empty cell. Text cells
 * are {@link surfeit.spot.FormulaGuard guarded}.
 */
public final class CsvReport {
    private CsvReport() {
    }

    /** Writes a heading row and the rows. */
    public static void write(Interpretation interpretation, Provenance provenance, Appendable out) throws IOException {
        CsvWriter csv = CsvWriter.builder().build(writerTo(out));
        csv.writeRecord(CsvColumns.ALL.stream().map(CsvColumns.Column::name).toList());
        for (CsvRow row : CsvRow.of(interpretation, provenance)) {
            csv.writeRecord(CsvColumns.ALL.stream().map(column -> column.cell().apply(row)).toList());
        }
        csv.flush();
    }

    private static Writer writerTo(Appendable out) {
        return new Writer() {
            @Override
            public void write(char[] characters, int offset, int length) throws IOException {
                out.append(CharBuffer.wrap(characters, offset, length));
            }

            @Override
            public void flush() {
                // Whoever owns the target flushes it.
            }

            @Override
            public void close() {
                // Whoever owns the target closes it.
            }
        };
    }
}
