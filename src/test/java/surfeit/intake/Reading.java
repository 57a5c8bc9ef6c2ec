package surfeit.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.element.Element;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/** What a test reads of one upload: its spots, the rows given back, and the report. */
record Reading(List<Spot> spots, List<RejectedSpot> rejected, String rejectedTable, IntakeReport report) {

    static Reading of(String text) {
        return of(text, IntakeOptions.DEFAULT);
    }

    static Reading of(String text, IntakeOptions options) {
        return of(text.getBytes(StandardCharsets.UTF_8), options);
    }

    /** Reads a file of src/test/resources/uploads. */
    static Reading ofFile(String name) {
        return ofFile(name, IntakeOptions.DEFAULT);
    }

    static Reading ofFile(String name, IntakeOptions options) {
        return of(bytesOf(name), options);
    }

    static byte[] bytesOf(String name) {
        try {
            return Files.readAllBytes(Path.of("src/test/resources/uploads", name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Reading of(byte[] bytes, IntakeOptions options) {
        List<Spot> spots = new ArrayList<>();
        List<RejectedSpot> rejected = new ArrayList<>();
        StringBuilder table = new StringBuilder();
        SpotIntake intake = new SpotIntake(options.limits(), new SpotSink() {
            private Optional<RejectedTable> rejectedTable = Optional.empty();

            @Override
            public void begin(TableHead head) {
                rejectedTable = Optional.of(new RejectedTable(head));
                table.append(rejectedTable.get().header());
            }

            @Override
            public void accept(ReadSpot spot) {
                spots.add(spot.spot());
            }

            @Override
            public void reject(RejectedSpot spot) {
                rejected.add(spot);
                table.append(rejectedTable.orElseThrow().lines(spot));
            }
        });
        try {
            SpotTable.read(Upload.of(bytes), options, intake);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Reading(spots, rejected, table.toString(), intake.report());
    }

    /** Reads a table into an intake of the test's own. */
    static void readInto(String text, SpotIntake intake) {
        try {
            SpotTable.read(Upload.of(text.getBytes(StandardCharsets.UTF_8)), IntakeOptions.DEFAULT, intake);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The only fault. */
    Fault fault() {
        if (report.faultCount() != 1) {
            throw new AssertionError("Expected one fault, found " + report.faults());
        }
        return report.faults().get(0);
    }

    /** Place of the only fault, which is one of a cell. */
    Place.Cell cell() {
        return (Place.Cell) fault().place();
    }

    ReportedValue value(int spot, String symbol) {
        return spots.get(spot).values().get(Element.of(symbol));
    }

    /** The measured fraction of an element of a spot. */
    double fraction(int spot, String symbol) {
        return ((ReportedValue.Measured) value(spot, symbol)).fraction();
    }

    CsvDialect dialect() {
        return report.dialect().orElseThrow();
    }
}
