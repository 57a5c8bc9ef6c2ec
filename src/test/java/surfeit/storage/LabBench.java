package surfeit.storage;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalPart;
import surfeit.element.Element;
import surfeit.lab.Expectation;
import surfeit.lab.Fault;
import surfeit.lab.ImportOptions;
import surfeit.lab.ImportReport;
import surfeit.lab.Laboratory;
import surfeit.lab.Occasion;
import surfeit.lab.Place;
import surfeit.lab.SpotRows;
import surfeit.lab.Upload;
import surfeit.segregation.Interpreter;
import surfeit.spot.Conditions;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/**
 * A lab on a real file in a folder of its own, for tests: samples of Ag-Cu eutectic, and spots handed over as
 * lists. All values are invented.
 */
public final class LabBench implements AutoCloseable {
    public static final Instant NOON = Instant.parse("2026-11-20T12:00:00Z");
    public static final Occasion ANNA = new Occasion("anna", NOON);
    /** Ag-Cu eutectic, an alloy of the program's catalogue. */
    public static final String AG_CU = "ag-cu-eutectic";

    private final SqliteStore store;
    private final Laboratory laboratory;

    private LabBench(SqliteStore store) {
        this.store = store;
        this.laboratory = new Laboratory(store, AlloyCatalogue.packaged(), new Interpreter(), 0.003);
    }

    public static LabBench in(Path folder) {
        return new LabBench(SqliteStore.open(folder));
    }

    public Laboratory laboratory() {
        return laboratory;
    }

    public SqliteStore store() {
        return store;
    }

    /** Describes a sample of the Ag-Cu alloy. */
    public LabBench describe(String name) {
        laboratory.describe(name, agCuSample(), Expectation.NONE, ANNA);
        return this;
    }

    public ImportReport post(String sample, Spot... spots) {
        return post(sample, ImportOptions.DEFAULT, spots);
    }

    public ImportReport post(String sample, ImportOptions options, Spot... spots) {
        return laboratory.importSpots(sample, upload("the file as sent"), rows(spots), options, ANNA);
    }

    @Override
    public void close() {
        store.close();
    }

    public static Sample agCuSample() {
        return Sample.of(Optional.of(AG_CU), Optional.empty());
    }

    public static Nominal nominal(String first, double firstFraction, String second, double secondFraction) {
        return new Nominal(Basis.ATOMIC, Map.of(Element.of(first), NominalPart.Point.exact(firstFraction),
            Element.of(second), NominalPart.Point.exact(secondFraction)));
    }

    /** A spot of the invented powder, its copper in percent as printed, silver the rest to 100. */
    public static Spot spot(String label, String copper) {
        double percent = Double.parseDouble(copper.replace(',', '.'));
        return new Spot(label, Optional.of("P1"), Optional.of("dark patch"), Optional.of("2026-11-20-a"),
            Optional.empty(), Conditions.UNKNOWN, Optional.empty(), Basis.ATOMIC, Map.of(
                Element.of("Cu"), ReportedValue.Measured.of(percent / 100, copper),
                Element.of("Ag"), ReportedValue.Measured.of((100 - percent) / 100, String.valueOf(100 - percent))));
    }

    public static Upload upload(String content) {
        byte[] bytes = content.getBytes(StandardCharsets.UTF_8);
        return new Upload() {
            @Override
            public InputStream open() {
                return new ByteArrayInputStream(bytes);
            }

            @Override
            public String mediaType() {
                return "text/csv";
            }

            @Override
            public Optional<String> fileName() {
                return Optional.of("spots.csv");
            }
        };
    }

    /** Hands over these spots as lines 2, 3, 4, ... of a table. */
    public static SpotRows rows(Spot... spots) {
        return (upload, sample, sink) -> {
            sink.rejectedHeader("label;problem");
            for (int i = 0; i < spots.length; i++) {
                sink.spot(spots[i], row(i + 2, spots[i].label()));
            }
        };
    }

    public static SpotRows.Row row(long line, String text) {
        return new SpotRows.Row() {
            @Override
            public Place place() {
                return Place.line(line);
            }

            @Override
            public String rejectedLines(List<Fault> faults) {
                return text + ";" + faults.get(0).code().code() + "\n";
            }
        };
    }
}
