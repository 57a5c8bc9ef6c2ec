package surfeit.http;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import surfeit.http.json.Numbers;
import surfeit.http.json.SpotDocuments;
import surfeit.segregation.screening.SpotReading.ElementReading;
import surfeit.spot.Spot;

/** The columns of a result row: one table for JSON, NDJSON and CSV. */
final class ResultColumns {
    private enum Kind { TEXT, NUMBER, WHOLE_NUMBER }

    /** A column: its name with unit, its value as a text, a number, or absent. */
    private record Column(String name, Kind kind, Function<ResultRow, Optional<String>> text,
                          Function<ResultRow, OptionalDouble> number) {
    }

    private static final List<Column> ALL = all();

    private ResultColumns() {
    }

    private static List<Column> all() {
        List<Column> columns = new ArrayList<>();
        text(columns, "sample", row -> Optional.of(row.stored().sample()));
        text(columns, "spot", row -> Optional.of(row.stored().id()));
        whole(columns, "revision", row -> Optional.of(row.stored().revision()));
        text(columns, "label", row -> Optional.of(spot(row).label()));
        text(columns, "particle", row -> spot(row).particle());
        text(columns, "feature", row -> spot(row).feature());
        text(columns, "session", row -> spot(row).session());
        text(columns, "acquired_time", row -> spot(row).acquiredTime()
            .map(DateTimeFormatter.ISO_OFFSET_DATE_TIME::format));
        whole(columns, "acquired_epoch_ms", row -> spot(row).acquiredTime()
            .map(time -> time.toInstant().toEpochMilli()));
        text(columns, "recorded_time", row -> Optional.of(row.stored().recorded().when().toString()));
        whole(columns, "recorded_epoch_ms", row -> Optional.of(row.stored().recorded().when().toEpochMilli()));
        number(columns, "beam_energy_kev", row -> spot(row).conditions().beamEnergyKev());
        text(columns, "group", row -> Optional.of(row.group()));
        text(columns, "element", row -> Optional.of(row.reading().element().symbol()));
        text(columns, "unit", row -> Optional.of(spot(row).basis().unit()));
        text(columns, "state", row -> Optional.of(row.reported().map(SpotDocuments::state).orElse("not_listed")));
        number(columns, "reported_percent", ResultRow::reportedPercent);
        number(columns, "reported_percent_u", ResultRow::reportedPercentU);
        percent(columns, "atomic_percent", row -> OptionalDouble.of(row.reading().atomicFraction()));
        percent(columns, "atomic_percent_u", row -> row.reading().uncertainty());
        percent(columns, "mass_percent", row -> OptionalDouble.of(row.massFraction()));
        percent(columns, "limit_atomic_percent", row -> row.reading().limit());
        percent(columns, "nominal_atomic_percent", row -> OptionalDouble.of(row.nominal()));
        percent(columns, "nominal_from_atomic_percent", row -> range(row, ElementReading::nominalLow));
        percent(columns, "nominal_to_atomic_percent", row -> range(row, ElementReading::nominalHigh));
        number(columns, "enrichment_factor", row -> row.reading().factor());
        number(columns, "p_value", row -> row.reading().pValue());
        number(columns, "p_value_adjusted", row -> row.reading().pAdjusted());
        text(columns, "adjustment", row -> Optional.of("benjamini-hochberg"));
        text(columns, "verdict", row -> Optional.of(row.reading().verdict().word()));
        return List.copyOf(columns);
    }

    private static Spot spot(ResultRow row) {
        return row.stored().spot();
    }

    private static OptionalDouble range(ResultRow row, Function<ElementReading, Double> limit) {
        return row.reading().nominalLow() == row.reading().nominalHigh()
            ? OptionalDouble.empty() : OptionalDouble.of(limit.apply(row.reading()));
    }

    private static void text(List<Column> columns, String name, Function<ResultRow, Optional<String>> value) {
        columns.add(new Column(name, Kind.TEXT, value, row -> OptionalDouble.empty()));
    }

    private static void number(List<Column> columns, String name, Function<ResultRow, OptionalDouble> value) {
        columns.add(new Column(name, Kind.NUMBER, row -> Optional.empty(), value));
    }

    private static void whole(List<Column> columns, String name, Function<ResultRow, Optional<Long>> value) {
        columns.add(new Column(name, Kind.WHOLE_NUMBER, row -> value.apply(row).map(String::valueOf),
            row -> value.apply(row).map(OptionalDouble::of).orElse(OptionalDouble.empty())));
    }

    private static void percent(List<Column> columns, String name, Function<ResultRow, OptionalDouble> fraction) {
        number(columns, name, row -> {
            OptionalDouble value = fraction.apply(row);
            return value.isPresent() ? OptionalDouble.of(Numbers.inPercent(value.getAsDouble())) : value;
        });
    }

    static List<String> names() {
        return ALL.stream().map(Column::name).toList();
    }

    static List<String> cells(ResultRow row) {
        List<String> cells = new ArrayList<>(ALL.size());
        for (Column column : ALL) {
            cells.add(column.kind() == Kind.NUMBER
                ? CsvCell.number(column.number().apply(row)) : CsvCell.text(column.text().apply(row)));
        }
        return cells;
    }

    static void write(JsonGenerator json, ResultRow row) throws IOException {
        json.writeStartObject();
        for (Column column : ALL) {
            json.writeFieldName(column.name());
            if (column.kind() != Kind.TEXT) {
                writeNumber(json, column.number().apply(row));
            } else if (column.text().apply(row).isPresent()) {
                json.writeString(column.text().apply(row).get());
            } else {
                json.writeNull();
            }
        }
        json.writeEndObject();
    }

    private static void writeNumber(JsonGenerator json, OptionalDouble value) throws IOException {
        double number = value.orElse(Double.NaN);
        if (!Double.isFinite(number)) {
            json.writeNull();
        } else if (number == Math.rint(number) && Math.abs(number) < 1e15) {
            json.writeNumber((long) number);
        } else {
            json.writeNumber(number);
        }
    }
}
