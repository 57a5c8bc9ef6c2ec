package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import surfeit.fuzz.PlainTable;

/** No CSV the service answers with, of any operation, has a cell that a spreadsheet would run. Invented numbers. */
class EveryCsvIsHarmlessTest {
    private static final String TABLE = """
        label,particle,feature,session,Ag at%,Cu at%
        =1+1,+P1,@home,-s1,20.1,79.9
        @x,-P2,@home,-s1,-0.5,100.5
        \t=cmd,=P3,@home,-s1,22.4,77.6
        -2,=P3,=HYPERLINK("x"),-s1,61.8,38.2
        =bad,=P3,+more,-s1,=1+1,38.2
        """;
    private static RunningService service;
    private static String frozen;

    @BeforeAll
    static void recordHostileWords() {
        service = RunningService.start();
        for (String sample : List.of("-cmd", "-other")) {
            service.put("/v1/samples/" + sample, InventedPowder.SAMPLE);
            assertThat(service.post("/v1/samples/" + sample + "/spots?on_error=skip", "text/csv", TABLE).json()
                .path("accepted_count").asInt()).isEqualTo(4);
        }
        frozen = service.send("POST", "/v1/samples/-cmd/interpretations", new byte[0]).json().path("id").asText();
    }

    @AfterAll
    static void stop() {
        service.close();
    }

    /** All but the upload as it was sent, byte by byte, and the files packed with the program. */
    static Stream<String> operations() {
        return OpenApi.DOCUMENT.operations().stream()
            .filter(operation -> !operation.path().endsWith("/original") && !operation.path().startsWith("/shared/"))
            .filter(operation -> OpenApi.DOCUMENT.followed(operation.node().path("responses").path("200"))
                .path("content").has("text/csv"))
            .map(operation -> operation.method() + " " + operation.path());
    }

    @ParameterizedTest
    @MethodSource("operations")
    void the_lab_s_words_are_no_formulas(String operation) {
        String address = operation.substring(operation.indexOf(' ') + 1).replace("{sample}", "-cmd")
            .replace("interpretations/{id}", "interpretations/" + frozen).replace("{id}", "imp_0001");
        Reply reply = operation.startsWith("POST")
            ? service.post(address + "?nominal=Ag:60.1,Cu:39.9&unit=at%25", "text/csv", TABLE.replaceAll("=bad.*\n", ""),
                "Accept", "text/csv")
            : service.get(address + (address.contains("comparisons") ? "?a=-cmd&b=-other" : ""), "Accept", "text/csv");

        assertThat(reply.status()).as(reply.text()).isEqualTo(200);
        assertThat(reply.mediaType()).isEqualTo("text/csv");
        assertThat(reply.text()).containsAnyOf("'@home", "'=bad");
        PlainTable.requireHarmlessTable(reply.text());
    }
}
