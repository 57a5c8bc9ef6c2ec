package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.jdbi.v3.core.Handle;
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
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.Recount;
import surfeit.lab.Recounted;
import surfeit.lab.SpotRows;
import surfeit.lab.SumsMark;
import surfeit.lab.Upload;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.Interpretation;
import surfeit.spot.Conditions;
import surfeit.spot.ReferencePiece;
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

    private final RecordStore store;
    private final Laboratory laboratory;

    private LabBench(RecordStore store) {
        this.store = store;
        this.laboratory = new Laboratory(store, AlloyCatalogue.packaged(), new Interpreter(), 0.003);
    }

    public static LabBench in(Path folder) {
        return new LabBench(SqliteStore.open(folder));
    }

    static LabBench on(RecordStore store) {
        return new LabBench(store);
    }

    /** On the record of that kind that belongs to a folder. */
    public static LabBench in(RecordEngine engine, Path folder) {
        return new LabBench(engine.open(folder));
    }

    public Laboratory laboratory() {
        return laboratory;
    }

    public RecordStore store() {
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

    /** The same with a description in words. */
    public static Sample described(String description) {
        Sample plain = agCuSample();
        return new Sample(plain.alloy(), plain.nominal(), plain.excludedElements(), plain.accuracyClass(), plain.form(),
            plain.geometry(), plain.coating(), plain.mount(), plain.judgement(), plain.preparation(),
            plain.diffractionPhases(), description, plain.spotsIndependent());
    }

    /** How many rows each table has. */
    public Map<String, Long> rowCounts() {
        Engine engine = store instanceof SqliteStore ? SqliteEngine.INSTANCE : PostgresEngine.INSTANCE;
        return store.read(access -> {
            Handle handle = ((SqlReadAccess) access).handle;
            Map<String, Long> counts = new TreeMap<>();
            Stream.concat(engine.tables(handle).stream(), Stream.of(FileCheck.HISTORY)).forEach(table -> counts.put(table,
                handle.createQuery("SELECT count(*) FROM " + table).mapTo(Long.class).one()));
            return counts;
        });
    }

    /** Checks that something is refused for a reason. @return the refusal */
    public static ProblemException assertRefused(ThrowingCallable work, Problem problem) {
        Throwable thrown = catchThrowable(work);
        assertThat(thrown).isInstanceOfSatisfying(ProblemException.class,
            refusal -> assertThat(refusal.problem()).as(refusal.detail()).isEqualTo(problem));
        return (ProblemException) thrown;
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

    /** So many spots named with this prefix and a number. */
    /** How far the sums of a sample reach, by way of grouping. */
    Map<GroupBy, SumsMark> marks(String sample) {
        return store().read(access -> access.sumsMarks(laboratory().sample(sample)));
    }

    /** What a recount finds of each of its kept sums. */
    List<Recounted.State> recount(String sample) {
        List<Recounted> found = new ArrayList<>();
        store().read(access -> {
            new Recount(AlloyCatalogue.packaged(), 0.003).of(access, sample, found::add);
            return found;
        });
        return found.stream().map(Recounted::state).toList();
    }

    /** The parts of its answer that come from spots. */
    List<Object> answer(String sample, GroupBy by) {
        Interpretation answer = laboratory().segregation(sample, by).interpretation();
        return List.of(answer.groups(), answer.contrasts(), answer.caveats(), answer.depths(), answer.spotCount());
    }

    public static Spot[] spots(String prefix, int count) {
        Spot[] spots = new Spot[count];
        for (int i = 0; i < count; i++) {
            spots[i] = spot(prefix + i, String.valueOf(70 + i % 100 / 10.0));
        }
        return spots;
    }

    public static Spot inSession(Spot spot, Optional<String> session) {
        return new Spot(spot.label(), spot.particle(), spot.feature(), session, spot.acquiredTime(), spot.conditions(),
            spot.reference(), spot.basis(), spot.values());
    }

    public static Spot acquired(Spot spot, String time) {
        return new Spot(spot.label(), spot.particle(), spot.feature(), spot.session(),
            Optional.of(OffsetDateTime.parse(time)), spot.conditions(), spot.reference(), spot.basis(), spot.values());
    }

    public static Spot withFeature(Spot spot, Optional<String> feature) {
        return new Spot(spot.label(), spot.particle(), feature, spot.session(), spot.acquiredTime(), spot.conditions(),
            spot.reference(), spot.basis(), spot.values());
    }

    public static Spot withReference(Spot spot, Nominal trueComposition) {
        return new Spot(spot.label(), spot.particle(), spot.feature(), spot.session(), spot.acquiredTime(),
            spot.conditions(), Optional.of(new ReferencePiece(trueComposition, false)), spot.basis(), spot.values());
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
