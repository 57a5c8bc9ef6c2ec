package surfeit.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The service is told to stop (SIGTERM) while requests are under way. */
class StoppedServiceTest {
    private static final Duration LONGEST_STOP = Duration.ofSeconds(15);
    private static final int SLOW_REQUESTS = 8;
    /** What the Java machine exits with after SIGTERM: 128 + 15. */
    private static final int TERMINATED = 143;

    @TempDir
    Path folder;

    @Test
    void requests_under_way_are_answered_and_recorded_before_the_service_ends() throws Exception {
        try (RunningProgram program = RunningProgram.serve(folder)) {
            program.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
            List<SlowRequest> requests = slowRequests(program);
            Thread.sleep(300);
            long start = System.nanoTime();

            program.terminate();
            Thread.sleep(1000);
            assertThatThrownBy(() -> refuseIfRefused(program)).isInstanceOf(IOException.class);
            int answered = 0;
            for (SlowRequest request : requests) {
                request.sendRest();
                String answer = request.answer();
                assertThat(answer).startsWith("HTTP/1.1 201 ").contains("\"accepted_count\":40");
                answered++;
                request.close();
            }

            assertThat(program.exitWithin(LONGEST_STOP)).isEqualTo(TERMINATED);
            assertThat(program.log()).isEmpty();
            Figures.print("SIGTERM with slow requests", SLOW_REQUESTS + " requests under way, " + answered
                + " answered, "
                + (SLOW_REQUESTS - answered) + " lost, ended after " + (System.nanoTime() - start) / 1_000_000 + " ms");
        }
        try (RunningProgram program = RunningProgram.serve(folder)) {
            assertThat(RecordedSpots.of(program, "A7").count()).isEqualTo(SLOW_REQUESTS * 40);
        }
    }

    private static List<SlowRequest> slowRequests(RunningProgram program) throws IOException {
        List<SlowRequest> requests = new ArrayList<>();
        for (int i = 0; i < SLOW_REQUESTS; i++) {
            SentSpots spots = SentSpots.table("A7", "slow" + i, 40, new Random(i));
            requests.add(new SlowRequest(program.address(), "/v1/samples/A7/spots", spots.mediaType(), spots.body())
                .begin());
        }
        return requests;
    }

    /** A stopping service takes nothing new: the connection is refused, or the answer is 503. */
    private static void refuseIfRefused(RunningProgram program) throws IOException, InterruptedException {
        if (program.get("/v1/samples").statusCode() == 503) {
            throw new IOException("refused by an answer");
        }
    }

    @Test
    void a_request_that_never_ends_does_not_keep_the_service_from_ending() throws Exception {
        try (RunningProgram program = RunningProgram.serve(folder)) {
            program.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
            SentSpots spots = SentSpots.table("A7", "never", 40, new Random(1));
            try (SlowRequest request = new SlowRequest(program.address(), "/v1/samples/A7/spots", spots.mediaType(),
                spots.body())) {
                request.begin();
                Thread.sleep(300);
                program.terminate();

                assertThat(program.exitWithin(LONGEST_STOP)).isEqualTo(TERMINATED);
            }
        }
        try (RunningProgram program = RunningProgram.serve(folder)) {
            assertThat(RecordedSpots.of(program, "A7").count()).isZero();
        }
    }

    /** As browsers do that have the board open. */
    @Test
    void connections_that_are_kept_open_without_a_request_are_closed_without_a_complaint() throws Exception {
        List<Socket> browsers = new ArrayList<>();
        try (RunningProgram program = RunningProgram.serve(folder)) {
            for (int i = 0; i < 8; i++) {
                Socket browser = new Socket(program.address().getHost(), program.address().getPort());
                browsers.add(browser);
                browser.getOutputStream().write(
                    "GET /readyz HTTP/1.1\r\nHost: localhost\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
                assertThat(browser.getInputStream().read(new byte[1000])).isPositive();
                Thread.sleep(150);
            }
            program.terminate();

            assertThat(program.exitWithin(LONGEST_STOP)).isEqualTo(TERMINATED);
            assertThat(program.log()).doesNotContain("ERROR").doesNotContain("Exception");
        } finally {
            for (Socket browser : browsers) {
                browser.close();
            }
        }
    }

    /** A larger import: {@code -Dsurfeit.faults.rows=1000000}. */
    @Test
    void a_large_import_under_way_is_answered_or_not_on_record_at_all() throws Exception {
        int rows = Integer.getInteger("surfeit.faults.rows", 20_000);
        SentSpots spots = SentSpots.table("A7", "p", rows, new Random(1));
        AtomicInteger answered = new AtomicInteger();
        try (RunningProgram program = RunningProgram.serve(folder)) {
            program.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
            Thread sender = new Thread(() -> {
                try {
                    answered.set(program.post("/v1/samples/A7/spots", spots.mediaType(), spots.body()).statusCode());
                } catch (IOException | InterruptedException e) {
                    answered.set(-1);
                }
            });
            sender.start();
            Thread.sleep(300);
            program.terminate();

            assertThat(program.exitWithin(LONGEST_STOP)).isEqualTo(TERMINATED);
            sender.join();
        }
        try (RunningProgram program = RunningProgram.serve(folder)) {
            int recorded = RecordedSpots.parse(program.get("/v1/samples").body()).at("/items/0/spot_count").asInt();
            Figures.print("SIGTERM during a large import", rows + " spots under way, answered with " + answered.get()
                + ", "
                + recorded + " on record");
            assertThat(recorded).isEqualTo(answered.get() == 201 ? rows : 0);
        }
    }
}
