package surfeit.http;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.element.Element;
import surfeit.http.json.Numbers;
import surfeit.http.json.SpotDocuments;
import surfeit.lab.StoredSpot;
import surfeit.spot.Conditions;
import surfeit.spot.Counts;
import surfeit.spot.Position;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/**
 * Writes spots as a long table, one row per spot and element, with the values as they were reported.
 *
 * <p>Text cells that a spreadsheet would run as a formula get an apostrophe in front; numbers stay numbers.
 */
final class SpotCsv implements AutoCloseable {
    private static final List<String> HEAD = List.of("id", "sample", "revision", "withdrawn", "label", "particle",
        "feature", "session", "acquired_time", "role", "beam_energy_kev", "live_time_s", "feature_size_um",
        "total_percent", "position", "tilt_deg", "unit", "element", "state", "value_percent", "u_percent",
        "limit_percent", "as_reported", "net_counts", "background_counts", "line");

    private final CsvWriter csv;

    SpotCsv(OutputStream out) {
        csv = CsvWriter.builder().build(new OutputStreamWriter(out, StandardCharsets.UTF_8));
        csv.writeRecord(HEAD);
    }

    void write(StoredSpot stored) {
        List<String> spot = spotCells(stored);
        for (Map.Entry<Element, ReportedValue> entry : stored.spot().values().entrySet()) {
            List<String> row = new ArrayList<>(spot);
            row.add(entry.getKey().symbol());
            addValue(row, entry.getValue());
            csv.writeRecord(row);
        }
    }

    private static List<String> spotCells(StoredSpot stored) {
        Spot spot = stored.spot();
        Conditions conditions = spot.conditions();
        return List.of(stored.id(), CsvCell.text(stored.sample()), Long.toString(stored.revision()),
            Boolean.toString(stored.withdrawn()), CsvCell.text(spot.label()), CsvCell.text(spot.particle()),
            CsvCell.text(spot.feature()), CsvCell.text(spot.session()),
            CsvCell.text(spot.acquiredTime().map(DateTimeFormatter.ISO_OFFSET_DATE_TIME::format)),
            spot.isReference() ? "reference" : "specimen",
            CsvCell.number(conditions.beamEnergyKev()), CsvCell.number(conditions.liveTimeS()),
            CsvCell.number(conditions.featureSizeUm()), CsvCell.stated(conditions.rawTotal()),
            CsvCell.text(conditions.position().map(Position::words)), CsvCell.number(conditions.tiltDeg()),
            spot.basis().unit());
    }

    private static void addValue(List<String> row, ReportedValue value) {
        row.add(SpotDocuments.state(value));
        if (value instanceof ReportedValue.Measured measured) {
            row.add(CsvCell.number(OptionalDouble.of(Numbers.stated(measured))));
            row.add(CsvCell.stated(measured.uncertainty()));
            row.add(CsvCell.stated(measured.limit()));
        } else {
            row.add("");
            row.add("");
            row.add(value instanceof ReportedValue.BelowLimit below ? CsvCell.stated(below.limitFraction())
                : value instanceof ReportedValue.NotDetected not ? CsvCell.stated(not.limitFraction()) : "");
        }
        row.add(CsvCell.printed(value.asReported()));
        Optional<ReportedValue.Measured> measured = value instanceof ReportedValue.Measured m ? Optional.of(m) : Optional.empty();
        Optional<Counts> counts = measured.flatMap(ReportedValue.Measured::counts);
        row.add(counts.map(each -> CsvCell.number(OptionalDouble.of(each.net()))).orElse(""));
        row.add(counts.map(each -> CsvCell.number(OptionalDouble.of(each.background()))).orElse(""));
        row.add(CsvCell.text(measured.flatMap(ReportedValue.Measured::line)));
    }

    @Override
    public void close() throws IOException {
        csv.close();
    }
}
