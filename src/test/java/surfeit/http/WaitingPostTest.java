package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.Parameter;
import surfeit.lab.Foreseen;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;

/** Posts of single spots that wait for their turn, while one long piece of work holds the writer. */
@OnBothEngines
class WaitingPostTest {
    private static final int WAITING_MAX = 8;
    /** How long a connection may rest while its body comes. */
    private static final Duration PAUSE = Duration.ofMillis(500);
    private static final String SPOTS = "/v1/samples/A7/spots";

    @Parameter
    RecordEngine engine;
    private RunningService service;
    private CompletableFuture<Boolean> longWork;
    private final CountDownLatch goOn = new CountDownLatch(1);
    private final ExecutorService threads = Executors.newCachedThreadPool();

    @BeforeEach
    void start() throws InterruptedException {
        service = RunningService.start(engine, WAITING_MAX, ServerSettings.DEFAULT.withRequests(RequestLimits.DEFAULT.withTimes(
            PAUSE, Duration.ofMinutes(10))));
        service.put("/v1/samples/A7", InventedPowder.SAMPLE);
        CountDownLatch begun = new CountDownLatch(1);
        longWork = CompletableFuture.supplyAsync(() -> service.store().write(access -> {
            begun.countDown();
            try {
                return goOn.await(60, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }), threads);
        assertThat(begun.await(30, TimeUnit.SECONDS)).isTrue();
    }

    @AfterEach
    void stop() {
        goOn.countDown();
        longWork.join();
        service.close();
        threads.shutdownNow();
    }

    private List<CompletableFuture<Reply>> send(int count, String... headers) {
        return IntStream.range(0, count).mapToObj(i -> CompletableFuture.supplyAsync(() -> service.post(SPOTS,
            "application/json", spot("P" + i), headers), threads)).toList();
    }

    private static String spot(String label) {
        return "{\"unit\": \"at%\", \"spots\": [{\"label\": \"" + label
            + "\", \"elements\": {\"Ag\": 60.2, \"Cu\": 39.8}}]}";
    }

    /** Waits until so many writes wait that no further one is taken. */
    private void awaitFull() throws InterruptedException {
        for (int i = 0; i < 3000; i++) {
            if (isFull()) {
                return;
            }
            Thread.sleep(10);
        }
        throw new AssertionError("The queue did not fill.");
    }

    private boolean isFull() {
        try {
            service.store().writeShared(Foreseen.NOTHING, access -> 0);
            return false;
        } catch (ProblemException e) {
            return e.problem() == Problem.OVERLOADED;
        }
    }

    @Test
    void a_post_that_finds_the_queue_full_is_told_when_to_come_again_and_leaves_nothing() throws Exception {
        awaitFull();

        Reply refused = service.post(SPOTS, "application/json", spot("Q1"));
        Reply underKey = service.post(SPOTS, "application/json", spot("Q2"), "Idempotency-Key", "q2");

        assertThat(List.of(refused, underKey)).allSatisfy(reply -> {
            assertThat(reply.status()).isEqualTo(503);
            assertThat(reply.header("Retry-After")).hasValue("1");
            assertThat(reply.json().path("code").asText()).isEqualTo("overloaded");
            assertThat(reply.json().path("setting").asText()).isEqualTo("writes-waiting-max");
        });
        assertThat(service.get("/v1/samples/A7").status()).as("reading goes on").isEqualTo(200);
        goOn.countDown();
        longWork.join();
        assertThat(service.laboratory().sample("A7").spotCount()).isZero();
        assertThat(service.post(SPOTS, "application/json", spot("Q1")).status()).isEqualTo(201);
        assertThat(service.post(SPOTS, "application/json", spot("Q2"), "Idempotency-Key", "q2").status()).isEqualTo(201);
    }

    @Test
    void posts_that_wait_hold_no_thread_and_each_gets_its_own_answer() {
        List<CompletableFuture<Reply>> good = send(3);
        CompletableFuture<Reply> faulty = CompletableFuture.supplyAsync(() -> service.post(SPOTS, "application/json",
            spot("F1").replace("60.2", "\"sixty\"")), threads);
        CompletableFuture<Reply> malformed = CompletableFuture.supplyAsync(() -> service.post(SPOTS, "application/json",
            spot("F2").substring(9)), threads);
        CompletableFuture<Reply> missing = CompletableFuture.supplyAsync(() -> service.post("/v1/samples/B9/spots",
            "application/json", spot("F3")), threads);
        assertThat(missing.join().status()).isEqualTo(404);

        goOn.countDown();

        assertThat(good).allSatisfy(post -> assertThat(post.join().status()).isEqualTo(201));
        assertThat(faulty.join().status()).isEqualTo(422);
        assertThat(malformed.join().status()).isEqualTo(400);
        assertThat(service.laboratory().sample("A7").spotCount()).isEqualTo(3);
    }

    @Test
    void a_post_that_waits_longer_than_a_body_may_pause_is_answered_all_the_same() throws Exception {
        List<CompletableFuture<Reply>> posts = send(2);
        Thread.sleep(3 * PAUSE.toMillis());
        assertThat(posts).noneMatch(CompletableFuture::isDone);

        goOn.countDown();

        assertThat(posts).allSatisfy(post -> assertThat(post.join().status()).isEqualTo(201));
    }

    @Test
    void posts_that_wait_when_the_service_stops_are_recorded_and_answered() throws Exception {
        List<CompletableFuture<Reply>> posts = send(WAITING_MAX);
        awaitFull();
        CompletableFuture<Void> stopping = CompletableFuture.runAsync(() -> service.server().stop(), threads);
        while (service.get("/readyz").status() == 200) {
            Thread.onSpinWait();
        }

        goOn.countDown();
        stopping.join();

        List<Integer> statuses = new ArrayList<>();
        posts.forEach(post -> statuses.add(post.join().status()));
        long recorded = statuses.stream().filter(status -> status == 201).count();
        assertThat(statuses).allMatch(status -> status == 201 || status == 503).contains(201);
        assertThat(service.laboratory().sample("A7").spotCount()).isEqualTo(recorded);
    }

    @Test
    void a_post_is_read_by_the_description_in_force_not_by_the_one_known_from_the_post_before() throws Exception {
        goOn.countDown();
        longWork.join();
        service.post(SPOTS, "application/json", withUncertainty("P0"));
        Reply described = service.get("/v1/samples/A7");

        service.put("/v1/samples/A7", InventedPowder.SAMPLE.replaceFirst("\\{", "{\"u_level\": 2, "), "If-Match",
            described.header("ETag").orElseThrow());
        service.post(SPOTS, "application/json", withUncertainty("P1"));

        assertThat(uncertainty("spt_0001")).isEqualTo(1);
        assertThat(uncertainty("spt_0002")).as("two standard uncertainties were stated").isEqualTo(0.5);
    }

    private static String withUncertainty(String label) {
        return spot(label).replace("60.2", "{\"value\": 60.2, \"u\": 1}");
    }

    private double uncertainty(String id) throws Exception {
        return service.get("/v1/spots/" + id).json().path("elements").path("Ag").path("u").asDouble();
    }
}
