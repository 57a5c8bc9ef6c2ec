package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

class PlainFlagsTest {

    private static List<String> words(String line) {
        return List.of(line.split(" "));
    }

    /** What picocli finds of the same words. */
    private static Map<String, String> byPicocli(List<String> words) {
        List<String> line = new ArrayList<>(List.of(ServeCommand.NAME));
        line.addAll(words);
        CommandLine.ParseResult found = Main.commandLine(ServeCommand.NAME).parseArgs(line.toArray(String[]::new))
            .subcommand();
        Map<String, String> said = new TreeMap<>();
        Arrays.stream(Setting.values()).filter(Setting::isFlag).map(Setting::key).forEach(key ->
            Optional.ofNullable(found.matchedOptionValue("--" + key, (String) null)).ifPresent(text -> said.put(key, text)));
        Optional.ofNullable(found.matchedOptionValue("--config", (String) null)).ifPresent(text -> said.put("config", text));
        return said;
    }

    @ParameterizedTest
    @ValueSource(strings = {"--port 8080", "--port=8080", "--port 8080 --data /var/lib/lab", "--no-auth", "--no-auth false",
        "--no-auth --port 0", "--no-auth=true --host=0.0.0.0", "--config lab.conf --host ::1", "--data=a=b",
        "--database-url jdbc:postgresql://db/lab?sslmode=verify-full --database-user lab", "--port eighty"})
    void flags_that_are_understood_say_what_picocli_finds(String line) {
        assertThat(PlainFlags.read(words(line))).contains(byPicocli(words(line)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"--help", "-h", "--prot 8080", "--port", "--port --no-auth", "--port=", "--port 1 --port 2", "extra",
        "--database-password secret", "@flags.txt", "--data @flags.txt", "--port -1", "--", "--port 8080 extra"})
    void anything_else_is_left_to_picocli(String line) {
        assertThat(PlainFlags.read(words(line))).isEmpty();
    }
}
