package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SettingsTest {
    @TempDir
    Path folder;

    @Test
    void a_flag_wins_over_the_environment_the_file_and_the_default() throws IOException {
        Path file = Files.writeString(folder.resolve("c.properties"), "port = 1\nhost = ::1\ndata = x\n");
        Settings settings = Settings.read(Map.of(Setting.PORT, "3"), Map.of("SURFEIT_PORT", "2", "SURFEIT_HOST", "0.0.0.0"),
            Optional.of(file));
        assertThat(settings.whole(Setting.PORT)).isEqualTo(3);
        assertThat(settings.from(Setting.PORT)).isEqualTo("flag --port");
        assertThat(settings.get(Setting.HOST)).isEqualTo("0.0.0.0");
        assertThat(settings.from(Setting.HOST)).isEqualTo("environment SURFEIT_HOST");
        assertThat(settings.get(Setting.DATA)).isEqualTo("x");
        assertThat(settings.from(Setting.DATA)).isEqualTo("file " + file);
        assertThat(settings.from(Setting.UPLOAD_ROWS_MAX)).isEqualTo("default");
    }

    @Test
    void all_faults_are_told_at_once_with_the_nearest_known_name() throws IOException {
        Path file = Files.writeString(folder.resolve("c.properties"), "prot = 1\ndetection-limit-mass-percent = 0,3\n");
        assertThatThrownBy(() -> Settings.read(Map.of(Setting.PORT, "70000"), Map.of("SURFEIT_HOSTT", "x"), Optional.of(file)))
            .isInstanceOf(SettingsException.class)
            .asInstanceOf(InstanceOfAssertFactories.type(SettingsException.class))
            .extracting(SettingsException::faults, InstanceOfAssertFactories.list(String.class))
            .containsExactlyInAnyOrderElementsOf(List.of(
                "file " + file + " sets \"prot\", which is no setting; nearest: port",
                "the environment sets SURFEIT_HOSTT, which is no setting; nearest: SURFEIT_HOST",
                "port (flag --port): expected a whole number from 0 to 65535, got \"70000\"",
                "detection-limit-mass-percent (file " + file + "): expected a number above 0.0 and below 10.0, got \"0,3\""));
    }

    @Test
    void a_missing_file_is_a_fault() {
        Path missing = folder.resolve("none.properties");
        assertThatThrownBy(() -> Settings.read(Map.of(), Map.of(), Optional.of(missing)))
            .hasMessageContaining("configuration file " + missing + " cannot be read");
    }

    @Test
    void every_default_is_a_value_its_own_setting_takes() {
        Settings settings = Settings.read(Map.of(), Map.of(), Optional.empty());
        for (Setting setting : Setting.values()) {
            assertThat(settings.get(setting)).isEqualTo(setting.standard());
        }
    }
}
