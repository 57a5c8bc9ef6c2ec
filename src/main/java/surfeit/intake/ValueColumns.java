package surfeit.intake;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import surfeit.element.Element;
import surfeit.spot.Counts;
import surfeit.spot.ReportedValue;

/** The columns of one element, or in a long table of the row's element, and how a value is read from them. */
final class ValueColumns {
    private static final int NONE = -1;

    private final Optional<Element> element;
    private final int value;
    private final int uncertainty;
    private final int uLevel;
    private final int net;
    private final int background;
    private final int limit;
    private final int line;
    private final Optional<String> headerLine;
    private final boolean alone;

    ValueColumns(Optional<Element> element, Map<ColumnMeaning.Kind, Integer> columns, int uLevel,
                 Optional<String> headerLine) {
        Map<ColumnMeaning.Kind, Integer> known = new EnumMap<>(columns);
        this.element = element;
        this.value = known.get(ColumnMeaning.Kind.VALUE);
        this.uncertainty = known.getOrDefault(ColumnMeaning.Kind.UNCERTAINTY, NONE);
        this.net = known.getOrDefault(ColumnMeaning.Kind.NET_COUNTS, NONE);
        this.background = known.getOrDefault(ColumnMeaning.Kind.BACKGROUND_COUNTS, NONE);
        this.limit = known.getOrDefault(ColumnMeaning.Kind.LIMIT, NONE);
        this.line = known.getOrDefault(ColumnMeaning.Kind.LINE, NONE);
        this.uLevel = uLevel;
        this.headerLine = headerLine;
        this.alone = known.size() == 1 && headerLine.isEmpty();
    }

    /** The element of the columns; absent in a long table. */
    Optional<Element> element() {
        return element;
    }

    /** Reads the value of one row; what cannot be read goes to the row's faults, and the result is then empty. */
    Optional<ReportedValue> read(RowFaults row, ReportedValueReader reader) {
        try {
            ReportedValue read = reader.value(row.cell(value));
            if (alone) {
                return Optional.of(read);
            }
            ReportedValueReader.Beside beside = beside(row, reader);
            ReportedValue kept = ReportedValueReader.with(read, beside);
            ReportedValueReader.notKept(kept, beside).forEach(words -> countNotKept(words, row));
            return Optional.of(kept);
        } catch (Refusal refusal) {
            row.add(value, refusal);
            return Optional.empty();
        }
    }

    private void countNotKept(String words, RowFaults row) {
        switch (words) {
            case "u" -> row.countNotKept(uncertainty);
            case "limit" -> row.countNotKept(limit);
            default -> {
                row.countNotKept(net);
                row.countNotKept(background);
            }
        }
    }

    private ReportedValueReader.Beside beside(RowFaults row, ReportedValueReader reader) {
        OptionalDouble u = number(row, uncertainty,
            text -> uLevel == 0 ? reader.uncertainty(text) : reader.uncertainty(text, uLevel));
        OptionalDouble detection = number(row, limit, reader::limit);
        return new ReportedValueReader.Beside(u, counts(row, reader), detection, xRayLine(row, reader));
    }

    private Optional<String> xRayLine(RowFaults row, ReportedValueReader reader) {
        try {
            return row.has(line) ? reader.line(row.cell(line)) : headerLine;
        } catch (Refusal refusal) {
            row.add(line, refusal);
            return Optional.empty();
        }
    }

    private Optional<Counts> counts(RowFaults row, ReportedValueReader reader) {
        OptionalDouble netCounts = number(row, net, reader::netCounts);
        OptionalDouble backgroundCounts = number(row, background, reader::backgroundCounts);
        if (row.has(net) != row.has(background)) {
            row.add(row.has(net) ? background : net, Refusal.expected(FaultCode.VALUE_OUT_OF_RANGE,
                "net and background counts together", "one alone"));
        }
        return netCounts.isPresent() && backgroundCounts.isPresent()
            ? Optional.of(new Counts(netCounts.getAsDouble(), backgroundCounts.getAsDouble()))
            : Optional.empty();
    }

    private static OptionalDouble number(RowFaults row, int column, ToDoubleFunction<String> reader) {
        if (row.has(column)) {
            try {
                return OptionalDouble.of(reader.applyAsDouble(row.cell(column)));
            } catch (Refusal refusal) {
                row.add(column, refusal);
            }
        }
        return OptionalDouble.empty();
    }
}
