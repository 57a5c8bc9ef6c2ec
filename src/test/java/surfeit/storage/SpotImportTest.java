package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import surfeit.element.Element;
import surfeit.lab.Dialect;
import surfeit.lab.Fault;
import surfeit.lab.ImportOptions;
import surfeit.lab.ImportOptions.OnError;
import surfeit.lab.ImportReport;
import surfeit.lab.KeptFile;
import surfeit.lab.Laboratory;
import surfeit.lab.LeftOut;
import surfeit.lab.PageRequest;
import surfeit.lab.Place;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.SpotFilter;
import surfeit.lab.SpotRows;
import surfeit.lab.StoredSpot;
import surfeit.spot.Spot;

@OnBothEngines
class SpotImportTest {
    private static final ImportOptions SKIP = new ImportOptions(OnError.SKIP, false);

    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;
    private LabBench bench;
    private Laboratory lab;

    @BeforeEach
    void open() {
        bench = LabBench.in(engine, folder).describe("A7");
        lab = bench.laboratory();
    }

    @AfterEach
    void close() {
        bench.close();
    }

    @Test
    void new_spots_are_recorded_in_the_order_of_the_upload() {
        ImportReport report = bench.post("A7", LabBench.spot("P1-2", "78.8"), LabBench.spot("P1-1", "77.9"));

        assertThat(report).returns(Optional.of("imp_0001"), ImportReport::id).returns("A7", ImportReport::sample)
            .returns(2L, ImportReport::sampleRevision).returns(2L, ImportReport::acceptedCount)
            .returns(0L, ImportReport::unchangedCount).returns(0L, ImportReport::faultCount);
        assertThat(spots()).containsExactly(
            new StoredSpot("spt_0001", "A7", 1, 2, LabBench.spot("P1-2", "78.8"), false, LabBench.ANNA,
                Optional.empty(), "imp_0001"),
            new StoredSpot("spt_0002", "A7", 1, 2, LabBench.spot("P1-1", "77.9"), false, LabBench.ANNA,
                Optional.empty(), "imp_0001"));
        assertThat(lab.imports().report("imp_0001")).isEqualTo(report);
    }

    @Test
    void the_same_values_again_in_whatever_print_leave_no_trace() {
        bench.post("A7", LabBench.spot("P1-1", "78.80"));
        Map<String, Long> before = bench.rowCounts();

        ImportReport again = bench.post("A7", LabBench.spot("P1-1", "78,8"));

        assertThat(again).returns(0L, ImportReport::acceptedCount).returns(1L, ImportReport::unchangedCount)
            .returns(Optional.empty(), ImportReport::id).returns(2L, ImportReport::sampleRevision);
        assertThat(bench.rowCounts()).isEqualTo(before);
    }

    @Test
    void known_and_new_spots_in_one_upload_are_told_apart() {
        bench.post("A7", LabBench.spots("P", 3));

        ImportReport report = bench.post("A7", LabBench.spots("P", 5));

        assertThat(report).returns(2L, ImportReport::acceptedCount).returns(3L, ImportReport::unchangedCount);
        assertThat(lab.sample("A7").spotCount()).isEqualTo(5);
    }

    @Test
    void other_values_under_a_recorded_key_are_refused_with_the_spot_to_correct() {
        bench.post("A7", LabBench.spot("P1-1", "78.8"));
        Map<String, Long> before = bench.rowCounts();

        ProblemException refusal = LabBench.assertRefused(
            () -> bench.post("A7", LabBench.spot("P1-9", "70"), LabBench.spot("P1-1", "78.9")),
            Problem.SPOT_ALREADY_RECORDED);

        assertThat(refusal.faults()).singleElement().satisfies(fault -> {
            assertThat(fault.spot()).contains("spt_0001");
            assertThat(fault.place()).isEqualTo(Place.line(3));
            assertThat(fault.detail()).contains("Cu \"78.8\" -> \"78.9\"");
        });
        assertThat(bench.rowCounts()).isEqualTo(before);
    }

    @Test
    void a_key_twice_in_one_upload_is_a_duplicate_with_other_values_and_known_with_the_same() {
        LabBench.assertRefused(() -> bench.post("A7", LabBench.spot("P1-1", "78.8"), LabBench.spot("P1-1", "70")),
            Problem.DUPLICATE_SPOT);

        assertThat(bench.post("A7", LabBench.spot("P1-1", "78.8"), LabBench.spot("P1-1", "78,80")))
            .returns(1L, ImportReport::acceptedCount).returns(1L, ImportReport::unchangedCount);
    }

    @Test
    void collisions_beside_other_faults_take_the_name_of_those() {
        bench.post("A7", LabBench.spot("P1-1", "78.8"));

        ProblemException refusal = LabBench.assertRefused(() -> lab.importSpots("A7", LabBench.upload("x"),
            (upload, sample, sink) -> {
                sink.spot(LabBench.spot("P1-1", "70"), LabBench.row(2, "P1-1"));
                sink.rejected(LabBench.row(3, "P1-2"), List.of(unknownElement(3)));
            }, ImportOptions.DEFAULT, LabBench.ANNA), Problem.UNKNOWN_ELEMENT);

        assertThat(refusal.faultCount()).isEqualTo(2);
        assertThat(refusal.faults()).extracting(Fault::code)
            .containsExactly(Problem.SPOT_ALREADY_RECORDED, Problem.UNKNOWN_ELEMENT);
    }

    @Test
    void all_faults_are_counted_and_the_first_hundred_told() {
        SpotRows broken = (upload, sample, sink) -> IntStream.range(0, 250).forEach(i ->
            sink.rejected(LabBench.row(i + 2, "row"), List.of(unknownElement(i + 2))));

        ProblemException refusal = LabBench.assertRefused(() -> lab.importSpots("A7", LabBench.upload("x"), broken,
            ImportOptions.DEFAULT, LabBench.ANNA), Problem.UNKNOWN_ELEMENT);

        assertThat(refusal.faultCount()).isEqualTo(250);
        assertThat(refusal.faults()).hasSize(100);
    }

    @Test
    void faults_come_in_the_order_of_the_upload_however_they_were_found() {
        bench.post("A7", LabBench.spots("P", 600));

        ProblemException refusal = LabBench.assertRefused(() -> lab.importSpots("A7", LabBench.upload("x"),
            (upload, sample, sink) -> {
                for (int line = 2; line < 602; line++) {
                    if (line % 7 == 0) {
                        sink.rejected(LabBench.row(line, "row"), List.of(unknownElement(line)));
                    } else {
                        String copper = line % 11 == 0 ? "1" : LabBench.spots("P", line - 1)[line - 2].values()
                            .get(Element.of("Cu")).asReported();
                        sink.spot(LabBench.spot("P" + (line - 2), copper), LabBench.row(line, "row"));
                    }
                }
            }, ImportOptions.DEFAULT, LabBench.ANNA), Problem.UNKNOWN_ELEMENT);

        assertThat(refusal.faultCount()).isEqualTo(LongStream.range(2, 602).filter(n -> n % 7 == 0 || n % 11 == 0).count());
        assertThat(refusal.faults()).extracting(fault -> fault.place().line().orElseThrow()).isSorted().contains(7L, 11L);
    }

    @Test
    void skipping_records_the_good_rows_and_gives_the_others_back() throws IOException {
        ImportReport report = lab.importSpots("A7", LabBench.upload("the file as sent"), (upload, sample, sink) -> {
            sink.dialect(new Dialect("utf-8", Optional.of(";"), Optional.of(","), Optional.empty(), Optional.of("at%"),
                Optional.of("wide"), "detected"));
            sink.rejectedHeader("label;problem");
            sink.leftOut(new LeftOut(Place.column(4, "Remark"), "neither a field nor an element", Optional.empty()));
            sink.spot(LabBench.spot("P1-1", "78.8"), LabBench.row(2, "P1-1"));
            sink.rejected(LabBench.row(3, "P1-2"), List.of(unknownElement(3)));
            sink.spot(LabBench.spot("P1-3", "70"), LabBench.row(4, "P1-3"));
            sink.leftOut(new LeftOut(Place.line(5), "summary row", Optional.of("Mean")));
        }, SKIP, LabBench.ANNA);

        assertThat(report).returns(2L, ImportReport::acceptedCount).returns(1L, ImportReport::rejectedCount)
            .returns(1L, ImportReport::faultCount);
        assertThat(lab.imports().report(report.id().orElseThrow())).isEqualTo(report);
        KeptFile rejected = lab.imports().rejected(report.id().orElseThrow());
        assertThat(text(rejected)).isEqualTo("label;problem\nP1-2;unknown-element\n");
    }

    @Test
    void an_upload_of_nothing_but_faults_is_kept_when_skipping_but_changes_no_sample() {
        ImportReport report = lab.importSpots("A7", LabBench.upload("x"), (upload, sample, sink) ->
            sink.rejected(LabBench.row(2, "P1-2"), List.of(unknownElement(2))), SKIP, LabBench.ANNA);

        assertThat(report).returns(Optional.of("imp_0001"), ImportReport::id).returns(1L, ImportReport::sampleRevision);
        assertThat(lab.sample("A7").revision()).isEqualTo(1);
    }

    @Test
    void validating_tells_what_would_happen_and_leaves_every_row_as_it_was() {
        bench.post("A7", LabBench.spot("P1-1", "78.8"));
        Map<String, Long> before = bench.rowCounts();
        Spot[] upload = {LabBench.spot("P1-1", "78.8"), LabBench.spot("P1-2", "70"), LabBench.spot("P1-3", "71")};

        ImportReport rehearsal = bench.post("A7", new ImportOptions(OnError.REFUSE, true), upload);

        assertThat(rehearsal.id()).isEmpty();
        assertThat(bench.rowCounts()).isEqualTo(before);
        LabBench.assertRefused(() -> bench.post("A7", new ImportOptions(OnError.REFUSE, true),
            LabBench.spot("P1-1", "1")), Problem.SPOT_ALREADY_RECORDED);
        ImportReport real = bench.post("A7", upload);
        assertThat(rehearsal).returns(real.acceptedCount(), ImportReport::acceptedCount)
            .returns(real.unchangedCount(), ImportReport::unchangedCount)
            .returns(real.sampleRevision(), ImportReport::sampleRevision);
    }

    @Test
    void the_bytes_are_kept_as_they_were_sent_over_several_mebibytes() throws IOException {
        String sent = "Ä;1,5\r\n".repeat(400_000);

        ImportReport report = lab.importSpots("A7", LabBench.upload(sent), LabBench.rows(LabBench.spot("P1-1", "70")),
            ImportOptions.DEFAULT, LabBench.ANNA);

        KeptFile original = lab.imports().original(report.id().orElseThrow());
        assertThat(original.mediaType()).isEqualTo("text/csv");
        assertThat(original.fileName()).contains("spots.csv");
        assertThat(text(original)).isEqualTo(sent);
        assertThat(report.file().byteCount()).hasValue(sent.getBytes(StandardCharsets.UTF_8).length);
        LabBench.assertRefused(() -> lab.imports().rejected(report.id().orElseThrow()), Problem.NOT_FOUND);
    }

    @Test
    void a_reader_that_breaks_off_leaves_the_record_as_it_was() {
        Map<String, Long> before = bench.rowCounts();

        assertThatThrownBy(() -> lab.importSpots("A7", LabBench.upload("x"), (upload, sample, sink) -> {
            sink.spot(LabBench.spot("P1-1", "78.8"), LabBench.row(2, "P1-1"));
            throw new IOException("the connection broke");
        }, ImportOptions.DEFAULT, LabBench.ANNA)).isInstanceOf(UncheckedIOException.class);

        assertThat(bench.rowCounts()).isEqualTo(before);
        bench.post("A7", LabBench.spot("P1-1", "78.8"));
    }

    @Test
    void names_with_control_or_invisible_characters_or_without_end_are_refused_whatever_form_they_came_in() {
        LabBench.assertRefused(() -> bench.post("A7", LabBench.spot("P1\n-1", "78.8")), Problem.NAME_INVALID);
        LabBench.assertRefused(() -> bench.post("A7", LabBench.spot("P1\u200B-1", "78.8")), Problem.NAME_INVALID);
        LabBench.assertRefused(() -> bench.post("A7", LabBench.spot("P".repeat(201), "78.8")), Problem.NAME_INVALID);
        LabBench.assertRefused(() -> bench.post("A7", LabBench.spot("P\ud800", "78.8")), Problem.NAME_INVALID);
    }

    @Test
    void spots_of_a_sample_nobody_described_are_refused() {
        LabBench.assertRefused(() -> bench.post("B1", LabBench.spot("P1-1", "78.8")), Problem.NOT_FOUND);
    }

    @Test
    void the_same_label_in_another_sample_session_or_at_another_time_is_another_spot() {
        bench.describe("B1");
        Spot spot = LabBench.spot("P1-1", "78.8");

        bench.post("A7", spot, LabBench.inSession(spot, Optional.of("b")), LabBench.inSession(spot, Optional.empty()),
            LabBench.acquired(spot, "2026-11-20T14:03:00+01:00"),
            LabBench.acquired(spot, "2026-11-20T14:03:00.000000001+01:00"));
        bench.post("B1", spot);

        assertThat(lab.sample("A7").spotCount()).isEqualTo(5);
        assertThat(bench.post("A7", LabBench.acquired(spot, "2026-11-20T13:03:00Z")).unchangedCount()).isEqualTo(1);
    }

    private static Fault unknownElement(long line) {
        return Fault.at(Place.cell(line, 3, "Xx at%"), Problem.UNKNOWN_ELEMENT, "Xx is no element.", "Xx");
    }

    private static String text(KeptFile file) throws IOException {
        try (InputStream bytes = file.bytes()) {
            return new String(bytes.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private List<StoredSpot> spots() {
        return lab.spots("A7", SpotFilter.ALL, PageRequest.first(100)).items();
    }
}
