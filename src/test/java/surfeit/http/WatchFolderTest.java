package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.lab.PageRequest;
import surfeit.lab.SpotFilter;
import surfeit.lab.TokenScope;

/** The watch-folder script of {@code shared/clients} against the service, with what happens at a workstation. */
class WatchFolderTest {
    private static final String SCRIPT = ClientRun.CLIENTS.resolve("watch_folder.py").toString();
    private static final String SAMPLE = "{\"alloy\": \"ag-cu-eutectic\"}";
    private static final long WAIT_NANOS = TimeUnit.SECONDS.toNanos(40);

    @TempDir
    Path folder;
    private Path lot;
    private RunningService service;
    private final List<Process> running = new ArrayList<>();

    @BeforeEach
    void start() throws IOException {
        ClientRun.needs("python3");
        service = RunningService.start();
        lot = Files.createDirectory(folder.resolve("lot-7"));
    }

    @AfterEach
    void stop() throws InterruptedException {
        for (Process process : running) {
            process.destroyForcibly().waitFor(20, TimeUnit.SECONDS);
        }
        if (service != null) {
            service.close();
        }
    }

    private List<String> words(String settle, String... more) {
        List<String> words = new ArrayList<>(List.of("python3", "-W", "error", SCRIPT, folder.toString(), "--url",
            service.server().address(), "--settle", settle));
        words.addAll(List.of(more));
        return words;
    }

    private ClientRun once(String... more) throws Exception {
        ClientRun run = ClientRun.of(folder, Map.of(), words("0.2", Stream.concat(Stream.of("--once"), Stream.of(more))
            .toArray(String[]::new)));
        assertThat(run.out()).doesNotContain("Traceback");
        return run;
    }

    private static List<String> names(Path of) throws IOException {
        try (Stream<Path> files = Files.list(of)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private long spotsOf(String sample) {
        return service.laboratory().spots(sample, SpotFilter.ALL, PageRequest.first(100)).items().size();
    }

    @Test
    void a_new_table_is_recorded_once_and_goes_to_done_with_its_report() throws Exception {
        Files.writeString(lot.resolve("sample.json"), SAMPLE);
        Files.writeString(lot.resolve("powder.csv"), InventedPowder.semicolon());

        ClientRun first = once();
        ClientRun second = once();

        assertThat(first.code()).as(first.out()).isZero();
        assertThat(first.out()).contains("9 new, 0 known spots of lot-7");
        assertThat(second.out()).isEmpty();
        assertThat(names(lot)).containsExactly("done", "sample.json");
        assertThat(names(lot.resolve("done"))).containsExactly("powder.csv", "powder.csv.report.json");
        assertThat(Files.readString(lot.resolve("done/powder.csv"))).isEqualTo(InventedPowder.semicolon());
        assertThat(Files.readString(lot.resolve("done/powder.csv.report.json"))).contains("\"accepted_count\": 9");
        assertThat(service.laboratory().imports().report("imp_0001").file().fileName()).contains("powder.csv");
        assertThat(spotsOf("lot-7")).isEqualTo(9);
    }

    @Test
    void a_refused_table_goes_to_refused_with_every_fault_beside_it_and_may_be_put_back() throws Exception {
        Files.writeString(lot.resolve("sample.json"), SAMPLE);
        String bad = "label;Ag at%;Cu at%\n1;60,1;39.9\n2;60,2;x\n";
        Files.writeString(lot.resolve("bad.csv"), bad);
        Files.writeString(lot.resolve("powder.csv"), InventedPowder.WIDE);

        ClientRun run = once();

        assertThat(run.code()).isZero();
        assertThat(names(lot.resolve("refused"))).containsExactly("bad.csv", "bad.csv.faults.txt");
        assertThat(Files.readString(lot.resolve("refused/bad.csv"))).isEqualTo(bad);
        assertThat(Files.readAllLines(lot.resolve("refused/bad.csv.faults.txt")))
            .anyMatch(line -> line.startsWith("line 2 column 3 (Cu at%) \"39.9\": "))
            .anyMatch(line -> line.startsWith("line 3 column 3 (Cu at%) \"x\": "));
        assertThat(names(lot.resolve("done"))).as("one fault keeps no other back").contains("powder.csv");

        Files.writeString(lot.resolve("bad.csv"), "label;Ag at%;Cu at%\n1;60,1;39,9\n2;60,2;39,8\n");
        assertThat(once().out()).contains("2 new");
        assertThat(names(lot.resolve("done"))).contains("bad.csv");
    }

    @Test
    void the_same_table_again_and_another_of_its_name_overwrite_nothing() throws Exception {
        Files.writeString(lot.resolve("sample.json"), SAMPLE);
        for (String content : List.of(InventedPowder.WIDE, InventedPowder.WIDE, InventedPowder.ETCHED)) {
            Files.writeString(lot.resolve("export.csv"), content);
            assertThat(once().code()).isZero();
        }

        Path done = lot.resolve("done");
        assertThat(names(done)).containsExactly("export-2.csv", "export-2.csv.report.json", "export-3.csv",
            "export-3.csv.report.json", "export.csv", "export.csv.report.json");
        assertThat(Files.readString(done.resolve("export.csv"))).isEqualTo(InventedPowder.WIDE);
        assertThat(Files.readString(done.resolve("export-3.csv"))).isEqualTo(InventedPowder.ETCHED);
        assertThat(spotsOf("lot-7")).isEqualTo(9 + 6);
        assertThat(service.laboratory().sample("lot-7").revision()).as("described, and two imports").isEqualTo(3);
    }

    @Test
    void a_sample_nobody_described_is_refused_in_words_and_nothing_is_guessed() throws Exception {
        Files.writeString(lot.resolve("powder.csv"), InventedPowder.WIDE);
        Path unnamed = Files.createDirectory(folder.resolve("lot 8"));
        Files.writeString(unnamed.resolve("sample.json"), SAMPLE);
        Files.writeString(unnamed.resolve("powder.csv"), InventedPowder.WIDE);
        Path broken = Files.createDirectory(folder.resolve("lot-9"));
        Files.writeString(broken.resolve("sample.json"), "{alloy}");
        Files.writeString(broken.resolve("powder.csv"), InventedPowder.WIDE);

        assertThat(once().code()).isZero();

        assertThat(Files.readString(lot.resolve("refused/powder.csv.faults.txt")))
            .contains("There is no sample \"lot-7\"").contains("sample.json");
        assertThat(Files.readString(unnamed.resolve("refused/powder.csv.faults.txt"))).contains("lot 8");
        assertThat(Files.readString(broken.resolve("refused/powder.csv.faults.txt"))).contains("is not JSON");
        assertThat(service.get("/v1/samples").json().path("items")).isEmpty();
    }

    @Test
    void what_is_no_finished_table_is_left_alone() throws Exception {
        service.put("/v1/samples/lot-7", SAMPLE);
        for (String name : List.of("~$powder.csv", ".powder.csv", "powder.csv.part", "image.tif", "empty.csv")) {
            Files.writeString(lot.resolve(name), name.equals("empty.csv") ? "" : InventedPowder.WIDE);
        }
        Process process = watch("0.2");
        Files.writeString(lot.resolve("powder.csv"), InventedPowder.WIDE);
        waitFor(() -> Files.exists(lot.resolve("done/powder.csv")));
        process.destroy();

        assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as("a stop that was asked for").isZero();
        assertThat(names(lot)).containsExactly(".powder.csv", "done", "empty.csv", "image.tif", "powder.csv.part",
            "~$powder.csv");
    }

    @Test
    void a_half_written_table_is_taken_when_it_is_whole() throws Exception {
        service.put("/v1/samples/lot-7", SAMPLE);
        watch("1.5");
        int half = InventedPowder.WIDE.indexOf("P2-d1");
        Path table = lot.resolve("slow.csv");
        Files.writeString(table, InventedPowder.WIDE.substring(0, half));
        for (String line : InventedPowder.WIDE.substring(half).split("(?<=\n)")) {
            Thread.sleep(300);
            Files.writeString(table, line, StandardOpenOption.APPEND);
        }

        waitFor(() -> Files.exists(lot.resolve("done/slow.csv")));

        assertThat(Files.readString(lot.resolve("done/slow.csv"))).isEqualTo(InventedPowder.WIDE);
        assertThat(service.laboratory().sample("lot-7").revision()).as("one import, not two").isEqualTo(2);
        assertThat(spotsOf("lot-7")).isEqualTo(9);
    }

    @Test
    void while_the_service_is_away_tables_wait_and_then_all_are_recorded() throws Exception {
        String address = service.server().address();
        Files.writeString(lot.resolve("sample.json"), SAMPLE);
        service.close();
        Files.writeString(lot.resolve("a.csv"), InventedPowder.WIDE);
        Files.writeString(lot.resolve("b.csv"), InventedPowder.ETCHED);
        ConcurrentLinkedQueue<String> said = new ConcurrentLinkedQueue<>();
        watch("0.2", said, address);
        waitFor(() -> said.stream().anyMatch(line -> line.startsWith("waiting ")));
        assertThat(names(lot)).containsExactly("a.csv", "b.csv", "sample.json");

        service = RunningService.startAgainAt(address);
        waitFor(() -> Files.exists(lot.resolve("done/b.csv")));

        assertThat(spotsOf("lot-7")).isEqualTo(9 + 6);
        assertThat(said.stream().filter(line -> line.startsWith("waiting "))).as("said once").hasSize(1);
    }

    @Test
    void where_the_run_ended_between_recording_and_moving_the_next_one_records_nothing_twice() throws Exception {
        service.put("/v1/samples/lot-7", SAMPLE);
        Files.writeString(lot.resolve("powder.csv"), InventedPowder.WIDE);
        Files.writeString(lot.resolve("done"), "a file where a folder should be");

        ClientRun stuck = once();
        Files.delete(lot.resolve("done"));
        ClientRun then = once();

        assertThat(stuck.code()).isEqualTo(1);
        assertThat(stuck.out()).contains("cannot be moved");
        assertThat(then.code()).isZero();
        assertThat(then.out()).as("the answer of the first time").contains("9 new, 0 known");
        assertThat(spotsOf("lot-7")).isEqualTo(9);
        assertThat(service.laboratory().sample("lot-7").revision()).isEqualTo(2);
    }

    @Test
    void a_wrong_token_refuses_no_table() throws Exception {
        service.put("/v1/samples/lot-7", SAMPLE);
        Files.writeString(lot.resolve("powder.csv"), InventedPowder.WIDE);
        String token = service.token("workstation", TokenScope.WRITE);

        ClientRun without = once();
        Path file = Files.writeString(folder.resolve("token.txt"), token + "\n");
        ClientRun with = once("--token-file", file.toString());

        assertThat(without.code()).isEqualTo(1);
        assertThat(without.out()).contains("token-missing").doesNotContain("refused  ");
        assertThat(with.code()).as(with.out()).isZero();
        assertThat(names(lot.resolve("done"))).contains("powder.csv");
    }

    @Test
    void one_sample_may_have_a_flat_folder() throws Exception {
        service.put("/v1/samples/lot-7", SAMPLE);
        Files.writeString(folder.resolve("powder.txt"), InventedPowder.WIDE.replace(" at%", ""));

        assertThat(once("--sample", "lot-7", "--unit", "at%", "--session", "s9").code()).isZero();

        assertThat(names(folder.resolve("done"))).contains("powder.txt");
        assertThat(spotsOf("lot-7")).isEqualTo(9);
    }

    private Process watch(String settle) throws IOException {
        return watch(settle, new ConcurrentLinkedQueue<>(), service.server().address());
    }

    private Process watch(String settle, ConcurrentLinkedQueue<String> said, String address) throws IOException {
        List<String> words = new ArrayList<>(List.of("python3", "-W", "error", SCRIPT, folder.toString(), "--url",
            address, "--settle", settle));
        Process process = ClientRun.start(folder, Map.of(), words);
        running.add(process);
        Thread reader = new Thread(() -> {
            try (BufferedReader lines = new BufferedReader(
                    new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
                lines.lines().forEach(said::add);
            } catch (IOException e) {
                said.add("unreadable: " + e);
            }
        });
        reader.setDaemon(true);
        reader.start();
        return process;
    }

    private interface Condition {
        boolean holds() throws IOException;
    }

    private static void waitFor(Condition condition) throws Exception {
        long until = System.nanoTime() + WAIT_NANOS;
        while (!condition.holds()) {
            assertThat(System.nanoTime()).as("waited too long").isLessThan(until);
            Thread.sleep(50);
        }
    }
}
