package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.lab.TokenScope;

/** The service does not open itself to other machines by accident. */
class StartTest {

    @ParameterizedTest
    @CsvSource({"127.0.0.1,true", "localhost,true", "::1,true", "127.8.8.8,true", "0.0.0.0,false", "::,false",
        "192.0.2.7,false",
        "no-such-host.invalid,false"})
    void only_the_own_machine_reaches_loopback(String host, boolean loopback) {
        assertThat(Server.isLoopback(host)).isEqualTo(loopback);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0.0.0.0", "::"})
    void it_refuses_to_listen_to_other_machines_without_a_token(String host) {
        assertThatThrownBy(() -> RunningService.start(ServerSettings.DEFAULT.withHost(host)).close())
            .isInstanceOf(UnsafeStartException.class).hasMessageContaining("host " + host
            + " can be reached from other machines")
            .hasMessageContaining("token new").hasMessageContaining("--no-auth");
    }

    @Test
    void said_aloud_it_listens_to_everybody() {
        ServerSettings open = ServerSettings.DEFAULT.withHost("0.0.0.0")
            .withAccess(new AccessRules(true, TrustedProxies.NONE));
        try (RunningService service = RunningService.start(open)) {
            assertThat(service.get("/v1/samples", "X-Forwarded-For", "203.0.113.9").status()).isEqualTo(200);
        }
    }

    @Test
    void with_a_token_it_listens_to_everybody_and_asks_everybody() {
        try (RunningService lab = RunningService.start()) {
            lab.token("anna", TokenScope.READ);
            try (Server server = Server.start(ServerSettings.DEFAULT.withHost("0.0.0.0").withPort(0), lab.laboratory(),
                    Clock.systemUTC())) {
                assertThat(server.port()).isPositive();
            }
        }
    }
}
