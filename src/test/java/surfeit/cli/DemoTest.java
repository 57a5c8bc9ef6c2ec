package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.http.Server;
import surfeit.lab.PageRequest;
import surfeit.lab.SampleFilter;
import surfeit.lab.StoredSample;
import surfeit.segregation.answer.GroupBy;

class DemoTest {

    @Test
    void it_shows_what_a_sample_shows_and_three_lines_to_try_and_leaves_nothing_behind() throws IOException {
        List<Path> before = folders();
        CommandRun demo = CommandRun.of("demo", "--once");
        assertThat(demo.code()).as(demo.err()).isZero();
        assertThat(demo.out()).startsWith("Invented demonstration data")
            .containsPattern("copper-rich patch +(Ag|Cu)").contains("enriched", "listening on http://127.0.0.1:");
        assertThat(demo.out().lines().filter(line -> line.startsWith("  curl "))).hasSize(3);
        assertThat(folders()).isEqualTo(before);
    }

    private static List<Path> folders() throws IOException {
        try (Stream<Path> all = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return all.filter(path -> path.getFileName().toString().startsWith("surfeit-demo-")).sorted().toList();
        }
    }

    @Test
    void every_sample_of_the_folder_is_on_record_and_answers(@TempDir Path folder) throws IOException, InterruptedException {
        Settings settings = Settings.read(Map.of(Setting.PORT, "0"), Map.of(), Optional.empty());
        try (Opened opened = Opened.on(folder, settings); Server server = Service.start(settings, opened)) {
            new DemoSamples(server.address()).load();
            List<String> names = opened.laboratory().samples(new SampleFilter(Optional.empty(), Optional.empty()),
                new PageRequest(100, Optional.empty())).items().stream().map(StoredSample::name).toList();
            assertThat(names).containsExactlyInAnyOrderElementsOf(ofFolder());
            for (String name : names) {
                assertThat(opened.laboratory().segregation(name, GroupBy.FEATURE).interpretation().groups()).as(name)
                    .isNotEmpty();
            }
        }
    }

    private static List<String> ofFolder() throws IOException {
        try (Stream<Path> all = Files.list(Path.of("sample-spectra-results"))) {
            return all.map(path -> path.getFileName().toString()).filter(name -> name.endsWith(".expected.txt"))
                .map(name -> name.substring(0, name.length() - ".expected.txt".length())).toList();
        }
    }
}
