package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.javalin.Javalin;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.storage.LabBench;

/** A fault of the program itself: told without detail, logged with its place and without what the request carried. */
class UnforeseenFailureTest {
    private static final String SECRET = "lab_c2VjcmV0";

    @TempDir
    Path folder;
    private LabBench lab;

    @BeforeEach
    void open() {
        lab = LabBench.in(folder);
    }

    @AfterEach
    void close() {
        lab.close();
    }

    @Test
    void an_answer_that_fails_half_way_breaks_off_and_cannot_pass_for_a_whole_one() throws Exception {
        Javalin javalin = serve(exchange -> {
            OutputStream out = exchange.answer().stream("text/csv");
            out.write("label,Ag at%\nP1-1,21.2\n".repeat(5000).getBytes(StandardCharsets.US_ASCII));
            out.flush();
            throw new ProblemException(Problem.STORAGE_UNAVAILABLE, "The file is damaged.");
        });
        String log = logOf(() -> {
            for (String kept : List.of("keep-alive", "close")) {
                assertThatThrownBy(() -> wholeAnswer(javalin.port(), kept)).as(kept).isInstanceOf(IOException.class);
            }
        });
        javalin.stop();

        assertThat(log.lines()).hasSize(2)
            .allSatisfy(line -> assertThat(line).contains("WARN Refusals - The file is damaged. (POST /broken"));
    }

    @Test
    void an_answer_that_fails_before_much_was_sent_is_a_refusal_like_any_other() throws Exception {
        Javalin javalin = serve(exchange -> {
            exchange.answer().header("Content-Disposition", "attachment");
            try (OutputStream out = exchange.answer().stream("text/csv")) {
                out.write("label,Ag at%\nP1-1,21.2\n".getBytes(StandardCharsets.US_ASCII));
                out.flush();
                throw new ProblemException(Problem.NOT_FOUND, "The rest is not there.");
            }
        });
        String answer = wholeAnswer(javalin.port(), "close");
        javalin.stop();

        assertThat(answer).startsWith("HTTP/1.1 404 ").contains("The rest is not there.")
            .doesNotContain("P1-1", "attachment");
    }

    /** @throws IOException where the connection ends before the answer does */
    private static String wholeAnswer(int port, String kept) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.getOutputStream().write(("POST /broken HTTP/1.1\r\nHost: localhost\r\nContent-Length: 0\r\n"
                + "Connection: " + kept + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
        }
    }

    private Javalin serve(Route.Handler handler) {
        RouteTable table = new RouteTable(List.of(Route.post("/broken", Scope.OPEN).to(handler)));
        ServiceFacts facts = new ServiceFacts(ServerSettings.DEFAULT, Clock.systemUTC(), "test", () -> "");
        Gate gate = new Gate(lab.laboratory().access(), ServerSettings.DEFAULT, Clock.systemUTC(),
            new EventTickets(System::nanoTime));
        return Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            new Dispatcher(table, facts, gate, RunningService.state(lab.laboratory())).register(config);
        }).start("127.0.0.1", 0);
    }

    private interface Work {
        void run() throws Exception;
    }

    /** What is logged while work is done. */
    private static String logOf(Work work) throws Exception {
        ByteArrayOutputStream log = new ByteArrayOutputStream();
        PrintStream before = System.err;
        System.setErr(new PrintStream(log, true, StandardCharsets.UTF_8));
        try {
            work.run();
        } finally {
            System.setErr(before);
        }
        return log.toString(StandardCharsets.UTF_8);
    }

    @Test
    void it_is_told_without_detail_and_logged_with_its_place_but_without_any_message() throws Exception {
        Javalin javalin = serve(exchange -> {
            throw new IllegalStateException("cannot take " + SECRET,
                new NumberFormatException("For input string: " + SECRET));
        });
        List<HttpResponse<String>> answers = new ArrayList<>();
        String log = logOf(() -> answers.add(HttpClient.newHttpClient().send(HttpRequest.newBuilder(
                URI.create("http://127.0.0.1:" + javalin.port() + "/broken"))
            .header("Authorization", "Bearer " + SECRET).header("X-Request-Id", "request-4711")
            .POST(HttpRequest.BodyPublishers.ofString(SECRET)).build(), HttpResponse.BodyHandlers.ofString())));
        javalin.stop();

        assertThat(answers.get(0).statusCode()).isEqualTo(500);
        assertThat(answers.get(0).body()).contains("\"code\":\"internal\"", "request-4711")
            .doesNotContain(SECRET, "surfeit.http");
        assertThat(log).contains("POST /broken, request_id request-4711", "java.lang.IllegalStateException",
            "caused by java.lang.NumberFormatException", "surfeit.http.UnforeseenFailureTest").doesNotContain(SECRET);
    }
}
