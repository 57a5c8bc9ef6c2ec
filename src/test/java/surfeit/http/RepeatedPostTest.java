package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.Parameter;
import surfeit.lab.EventFilter;
import surfeit.lab.LabEvent;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;

/** The same spots sent by many at the same moment, as clients do that lose the answer and try again. */
@OnBothEngines
class RepeatedPostTest {
    private static final int SENDERS = 64;
    private static final String SPOTS = "/v1/samples/A7/spots";

    @Parameter
    RecordEngine engine;
    private RunningService service;
    private final ExecutorService senders = Executors.newFixedThreadPool(SENDERS);

    @BeforeEach
    void start() {
        service = RunningService.start(engine);
        service.put("/v1/samples/A7", InventedPowder.SAMPLE);
    }

    @AfterEach
    void stop() {
        senders.shutdownNow();
        service.close();
    }

    @Test
    void parallel_identical_posts_make_one_row_and_one_answer() throws Exception {
        List<Reply> replies = together(sender -> service.post(SPOTS, "application/json", one("\"78.8\"")));

        assertThat(replies.stream().filter(reply -> reply.status() == 201)).singleElement()
            .satisfies(reply -> assertThat(reply.json().path("accepted_count").asInt()).isEqualTo(1));
        List<Reply> others = replies.stream().filter(reply -> reply.status() != 201).toList();
        assertThat(others).hasSize(SENDERS - 1).allSatisfy(reply -> assertThat(reply.status()).isEqualTo(200));
        assertThat(bodies(others)).singleElement().asString().contains("\"accepted_count\":0,\"unchanged_count\":1");
        assertRecorded(1);
    }

    @Test
    void parallel_identical_posts_under_one_key_get_the_same_answer_byte_for_byte() throws Exception {
        List<Reply> replies = together(sender ->
            service.post(SPOTS, "text/csv", InventedPowder.WIDE, "Idempotency-Key", "run-1"));

        assertThat(replies).allSatisfy(reply -> {
            assertThat(reply.status()).isEqualTo(201);
            assertThat(reply.header("Location")).hasValue("/v1/imports/imp_0001");
        });
        assertThat(bodies(replies)).hasSize(1);
        assertRecorded(9);
    }

    @Test
    void the_same_spots_as_tables_and_as_json_at_the_same_moment_are_recorded_once() throws Exception {
        List<Reply> replies = together(sender -> switch (sender % 3) {
            case 0 -> service.post(SPOTS, "text/csv", InventedPowder.WIDE);
            case 1 -> service.post(SPOTS, "text/csv", InventedPowder.longTable());
            default -> service.post(SPOTS, "application/x-ndjson", InventedPowder.ndjson());
        });

        assertThat(replies.stream().mapToInt(reply -> reply.json().path("accepted_count").asInt()).sum()).isEqualTo(9);
        assertThat(replies.stream().mapToInt(reply -> reply.json().path("unchanged_count").asInt()).sum())
            .isEqualTo(9 * (SENDERS - 1));
        assertRecorded(9);
    }

    @Test
    void of_parallel_posts_with_different_values_for_one_spot_one_is_recorded_and_the_others_are_told()
        throws Exception {
        List<Reply> replies = together(sender ->
            service.post(SPOTS, "application/json", one(Integer.toString(sender + 10))));

        assertThat(replies.stream().filter(reply -> reply.status() == 201)).hasSize(1);
        assertThat(replies.stream().filter(reply -> reply.status() == 409)).hasSize(SENDERS - 1)
            .allSatisfy(reply -> assertThat(reply.code()).isEqualTo("spot-already-recorded"));
        assertRecorded(1);
    }

    private void assertRecorded(int spots) {
        assertThat(service.laboratory().sample("A7").spotCount()).isEqualTo(spots);
        assertThat(service.laboratory().sample("A7").revision()).isEqualTo(2);
        assertThat(service.laboratory().events(EventFilter.ALL, 0, 100)).extracting(LabEvent::type)
            .containsExactly(LabEvent.Type.SAMPLE_CHANGED, LabEvent.Type.SPOTS_IMPORTED);
        assertThat(service.laboratory().auditLog().head().count()).isEqualTo(2);
    }

    private static String one(String copper) {
        return "{\"unit\": \"at%\", \"spots\": [{\"label\": \"P1-1\", \"elements\": {\"Ag\": 21.2, \"Cu\": " + copper
            + "}}]}";
    }

    private static Set<String> bodies(List<Reply> replies) {
        return replies.stream().map(reply -> new String(reply.body(), StandardCharsets.UTF_8))
            .collect(Collectors.toSet());
    }

    /** Lets all senders start at the same moment. */
    private List<Reply> together(IntFunction<Reply> sending) throws Exception {
        CountDownLatch start = new CountDownLatch(1);
        List<Future<Reply>> futures = new ArrayList<>();
        for (int i = 0; i < SENDERS; i++) {
            int sender = i;
            futures.add(senders.submit((Callable<Reply>) () -> {
                start.await();
                return sending.apply(sender);
            }));
        }
        start.countDown();
        List<Reply> replies = new ArrayList<>();
        for (Future<Reply> future : futures) {
            replies.add(future.get());
        }
        return replies;
    }
}
