package surfeit.faults;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.composition.AlloyCatalogue;
import surfeit.lab.Expectation;
import surfeit.lab.KeptAnswer;
import surfeit.lab.Laboratory;
import surfeit.lab.Occasion;
import surfeit.lab.RepeatKey;
import surfeit.segregation.Interpreter;
import surfeit.spot.Sample;
import surfeit.storage.SqliteStore;

/** The service is told to stop (SIGTERM) while event streams are open, one of them to a client that reads nothing. */
class StoppedStreamsTest {
    private static final Duration LONGEST_STOP = Duration.ofSeconds(15);
    private static final int STREAMS = 200;
    private static final int WAITING = 20;
    /** Events that no buffer between takes, for a client that reads nothing. */
    private static final int MANY_EVENTS = 40_000;
    private static final int TERMINATED = 143;
    private static final String SAMPLE = "{\"alloy\": \"ag-cu-eutectic\"}";

    @TempDir
    Path folder;

    private static Socket ask(URI address, String query, String accept) throws IOException {
        Socket socket = new Socket();
        socket.setReceiveBufferSize(4096);
        socket.setSoTimeout(20_000);
        socket.connect(new InetSocketAddress(address.getHost(), address.getPort()));
        socket.getOutputStream().write(("GET /v1/events" + query + " HTTP/1.1\r\nHost: localhost\r\nAccept: " + accept
            + "\r\nConnection: close\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
        return socket;
    }

    private static void readTo(Socket socket, String end) throws IOException {
        StringBuilder read = new StringBuilder();
        while (read.indexOf(end) < 0) {
            int next = socket.getInputStream().read();
            if (next < 0) {
                throw new IOException("The connection ended with " + read);
            }
            read.append((char) next);
        }
    }

    /** What comes to the end of the connection. */
    private static String rest(Socket socket) throws IOException {
        try (socket) {
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void every_stream_is_told_and_every_waiting_request_answered_though_one_client_reads_nothing() throws Exception {
        manyEvents();
        List<Socket> streams = new ArrayList<>();
        List<Socket> waiting = new ArrayList<>();
        try (RunningProgram program = RunningProgram.serve(folder);
             Socket deaf = ask(program.address(), "?after=0", "text/event-stream")) {
            for (int i = 0; i < WAITING; i++) {
                waiting.add(ask(program.address(), "?wait_s=60", "application/json"));
            }
            for (int i = 0; i < STREAMS; i++) {
                streams.add(ask(program.address(), "", "text/event-stream"));
            }
            for (Socket stream : streams) {
                readTo(stream, "id: " + MANY_EVENTS + "\n\n");
            }
            SentSpots spots = SentSpots.table("A7", "slow", 40, new Random(1));
            try (SlowRequest slow = new SlowRequest(program.address(), "/v1/samples/A7/spots", spots.mediaType(),
                spots.body()).begin()) {
                Thread.sleep(1000);
                long start = System.nanoTime();
                program.terminate();
                int told = 0;
                for (Socket stream : streams) {
                    String heard = rest(stream);
                    told += heard.contains("event: stream.shutdown\n")
                        && heard.endsWith("}\n\n") ? 1 : 0;
                }
                int answered = 0;
                for (Socket one : waiting) {
                    answered += rest(one).contains("{\"items\":[],\"next\":" + MANY_EVENTS) ? 1 : 0;
                }
                assertThat(program.get("/readyz").statusCode()).isEqualTo(503);
                slow.sendRest();
                assertThat(slow.answer()).startsWith("HTTP/1.1 201 ");
                assertThat(program.exitWithin(LONGEST_STOP)).isEqualTo(TERMINATED);
                Figures.print("SIGTERM with open streams", STREAMS + " streams, " + told + " told; " + WAITING
                    + " waiting, "
                    + answered + " answered; 1 that reads nothing; ended after "
                    + (System.nanoTime() - start) / 1_000_000 + " ms");
                assertThat(told).isEqualTo(STREAMS);
                assertThat(answered).isEqualTo(WAITING);
                assertThat(program.log()).isEmpty();
                assertThat(deaf.isConnected()).isTrue();
            }
        }
    }

    @Test
    void with_nothing_but_open_streams_it_stops_at_once_and_who_comes_again_goes_on_where_he_was() throws Exception {
        String heard;
        try (RunningProgram program = RunningProgram.serve(folder)) {
            program.put("/v1/samples/A7", SAMPLE);
            Socket stream = ask(program.address(), "?after=0", "text/event-stream");
            Thread.sleep(500);
            long start = System.nanoTime();
            program.terminate();
            heard = rest(stream);
            assertThat(program.exitWithin(LONGEST_STOP)).isEqualTo(TERMINATED);
            Figures.print("SIGTERM with an open stream alone", "told and ended after "
                + (System.nanoTime() - start) / 1_000_000 + " ms");
        }
        assertThat(heard).contains("id: 1\nevent: sample.changed\n").contains("id: 1\nevent: stream.shutdown\n");
        try (RunningProgram program = RunningProgram.serve(folder)) {
            program.put("/v1/samples/A8", SAMPLE);
            String next = program.get("/v1/events?after=1").body();
            assertThat(next).contains("\"sample\":\"A8\"").doesNotContain("\"sample\":\"A7\"");
        }
    }

    private void manyEvents() {
        try (SqliteStore store = SqliteStore.open(folder)) {
            Laboratory lab = new Laboratory(store, AlloyCatalogue.packaged(), new Interpreter(), 0.003);
            Occasion occasion = new Occasion("test", Instant.now());
            lab.once(new RepeatKey("test", "many", "many"), occasion, open -> {
                Sample sample = Sample.of(Optional.of("ag-cu-eutectic"), Optional.empty());
                open.describe("A7", sample, Expectation.NONE, occasion);
                for (int i = 1; i < MANY_EVENTS; i++) {
                    open.describe("a-long-name-of-a-sample-so-that-no-buffer-takes-it-all-" + i, sample,
                        Expectation.NONE, occasion);
                }
                return new KeptAnswer(200, Map.of(), new byte[0]);
            });
        }
    }
}
