package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.http.Server;
import surfeit.http.ServerSettings;

/** What is set is what the running service keeps to. */
class ServiceSettingsTest {
    @TempDir
    Path folder;

    @Test
    void without_settings_the_service_has_its_usual_limits() {
        assertThat(ServiceSettings.server(Settings.read(Map.of(), Map.of(), Optional.empty())))
            .isEqualTo(ServerSettings.DEFAULT);
    }

    @Test
    void every_limit_the_service_tells_of_is_a_setting_and_has_the_value_set() throws Exception {
        Map<Setting, String> flags = new EnumMap<>(Setting.class);
        Map<String, String> expected = new TreeMap<>();
        int value = 100;
        for (Setting setting : Setting.values()) {
            if (setting.key().endsWith("-max") || setting.key().startsWith("body-")) {
                String text = Integer.toString(setting == Setting.ELEMENTS_PER_SPOT_MAX ? 7
                    : setting == Setting.HEADER_BYTES_MAX ? 4321 : value++);
                flags.put(setting, text);
                expected.put(setting.key(), text);
            }
        }
        assertThat(limitsOfServiceWith(flags)).isEqualTo(expected).hasSizeGreaterThan(12);
    }

    private Map<String, String> limitsOfServiceWith(Map<Setting, String> flags)
            throws IOException, InterruptedException {
        flags.put(Setting.PORT, "0");
        flags.put(Setting.DATA, folder.resolve("lab").toString());
        Settings settings = Settings.read(flags, Map.of(), Optional.empty());
        try (Opened opened = Opened.on(settings); Server server = Service.start(settings, opened)) {
            HttpResponse<String> answer = HttpClient.newHttpClient()
                .send(HttpRequest.newBuilder(URI.create(server.address() + "/v1")).build(),
                HttpResponse.BodyHandlers.ofString());
            Map<String, String> limits = new TreeMap<>();
            for (JsonNode limit : new ObjectMapper().readTree(answer.body()).path("limits")) {
                limits.put(limit.path("setting").asText(), limit.path("value").asText());
            }
            return limits;
        }
    }
}
