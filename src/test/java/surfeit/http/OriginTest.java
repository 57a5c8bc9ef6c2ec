package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whose word on the client's address is taken, and what follows from it. */
class OriginTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "10.0.0.5                 | 10.0.0.5        | true",
        "10.0.0.5                 | 10.0.0.6        | false",
        "10.0.0.0/8, 192.168.7.1  | 10.255.1.2      | true",
        "10.0.0.0/8, 192.168.7.1  | 192.168.7.1     | true",
        "10.0.0.0/8, 192.168.7.1  | 192.168.7.2     | false",
        "192.168.7.128/25         | 192.168.7.127   | false",
        "192.168.7.128/25         | 192.168.7.200   | true",
        "0.0.0.0/0                | 203.0.113.9     | true",
        "0.0.0.0/0                | 2001:db8::1     | false",
        "2001:db8::/32            | 2001:db8:9::1   | true",
        "2001:db8::/32            | 2001:db9::1     | false",
        "::1                      | 0:0:0:0:0:0:0:1 | true",
        "none                     | 127.0.0.1       | false",
        "10.0.0.5                 | proxy.example   | false"})
    void a_machine_is_trusted_by_address_or_network(String trusted, String address, boolean expected) {
        assertThat(TrustedProxies.of(trusted).trusts(address)).isEqualTo(expected);
    }

    @ParameterizedTest
    @ValueSource(strings = {"proxy.example", "", "10.0.0.5,", "10.0.0.0/33", "10.0.0.256", "10.0.0", "::1/129",
        "10.0.0.0/", "10.0.0.0/-1",
        "localhost", "1::2::3"})
    void names_and_impossible_networks_are_refused(String text) {
        assertThatThrownBy(() -> TrustedProxies.of(text)).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("expected IP addresses or networks such as 192.168.7.0/24, or none");
    }

    @Test
    void all_addresses_of_one_ipv6_network_count_as_one_machine() {
        assertThat(Origin.machine("2001:db8:1:2:3::4")).isEqualTo(Origin.machine("2001:db8:1:2:ffff::9"))
            .isEqualTo("20010db800010002");
        assertThat(Origin.machine("2001:db8:1:3::4")).isNotEqualTo(Origin.machine("2001:db8:1:2::4"));
        assertThat(Origin.machine("192.0.2.7")).isEqualTo("192.0.2.7");
    }

    private static String next(RunningService service, String... headers) {
        for (String name : new String[] {"A1", "A2"}) {
            service.put("/v1/samples/" + name, "{\"alloy\": \"ag-cu-eutectic\"}");
        }
        return service.get("/v1/samples?page_size=1", headers).header("Link").orElseThrow();
    }

    @Test
    void links_name_the_address_the_client_knows_where_a_trusted_proxy_tells_it() {
        AccessRules behindProxy = new AccessRules(false, TrustedProxies.of("127.0.0.1"));
        try (RunningService service = RunningService.start(ServerSettings.DEFAULT.withAccess(behindProxy))) {
            assertThat(next(service, "X-Forwarded-Proto", "https", "X-Forwarded-Host", "lab.example.org"))
                .startsWith("<https://lab.example.org/v1/samples?cursor=");
            assertThat(next(service, "X-Forwarded-Proto", "javascript", "X-Forwarded-Host", "a\"b/<>"))
                .startsWith("<" + service.server().address() + "/v1/samples?cursor=");
        }
    }

    @Test
    void nobody_else_s_word_is_taken() {
        AccessRules askingNobody = new AccessRules(true, TrustedProxies.NONE);
        try (RunningService service = RunningService.start(ServerSettings.DEFAULT.withAccess(askingNobody))) {
            assertThat(next(service, "X-Forwarded-Proto", "https", "X-Forwarded-Host", "lab.example.org", "Forwarded",
                "host=lab.example.org;proto=https")).startsWith("<" + service.server().address()
                + "/v1/samples?cursor=");
        }
    }
}
