package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import surfeit.lab.ImportOptions;
import surfeit.lab.ImportOptions.OnError;
import surfeit.lab.KeptAnswer;
import surfeit.lab.Laboratory;
import surfeit.lab.Occasion;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.RepeatKey;

@OnBothEngines
class RepeatedRequestTest {
    private static final RepeatKey KEY = new RepeatKey("anna", "k1", "f1");
    private static final KeptAnswer FIRST =
        new KeptAnswer(201, Map.of("Content-Type", "application/json"), "{\"ä\":1}".getBytes(StandardCharsets.UTF_8));
    private static final KeptAnswer SECOND = new KeptAnswer(200, Map.of(), new byte[0]);

    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;
    private LabBench bench;
    private Laboratory lab;

    @BeforeEach
    void open() {
        bench = LabBench.in(engine, folder).describe("A7");
        lab = bench.laboratory();
    }

    @AfterEach
    void close() {
        bench.close();
    }

    @Test
    void the_first_answer_is_given_again_byte_for_byte_also_after_opening_again() {
        assertThat(lab.once(KEY, LabBench.ANNA, open -> FIRST)).isEqualTo(FIRST);
        assertThat(lab.once(KEY, LabBench.ANNA, open -> SECOND)).isEqualTo(FIRST);
        bench.close();
        bench = LabBench.in(engine, folder);

        assertThat(bench.laboratory().once(KEY, LabBench.ANNA, open -> SECOND)).isEqualTo(FIRST);
    }

    @Test
    void another_request_under_the_same_key_is_refused() {
        lab.once(KEY, LabBench.ANNA, open -> FIRST);

        LabBench.assertRefused(() -> lab.once(new RepeatKey("anna", "k1", "f2"), LabBench.ANNA, open -> SECOND),
            Problem.IDEMPOTENCY_KEY_REUSED);
    }

    @Test
    void two_people_may_use_the_same_key() {
        lab.once(KEY, LabBench.ANNA, open -> FIRST);

        assertThat(lab.once(new RepeatKey("ben", "k1", "f2"), LabBench.ANNA, open -> SECOND)).isEqualTo(SECOND);
    }

    @Test
    void a_key_is_forgotten_after_seven_days_and_no_sooner() {
        lab.once(KEY, LabBench.ANNA, open -> FIRST);

        assertThat(lab.once(KEY, later(Duration.ofDays(7)), open -> SECOND)).isEqualTo(FIRST);
        assertThat(lab.once(KEY, later(Duration.ofDays(7).plusSeconds(1)), open -> SECOND)).isEqualTo(SECOND);
    }

    private static Occasion later(Duration after) {
        return new Occasion("anna", LabBench.NOON.plus(after));
    }

    @Test
    void work_that_is_refused_records_nothing_and_may_be_sent_again() {
        Map<String, Long> before = bench.rowCounts();

        LabBench.assertRefused(() -> lab.once(KEY, LabBench.ANNA, open -> {
            open.importSpots("A7", LabBench.upload("x"), LabBench.rows(LabBench.spot("P1-1", "78.8")),
                ImportOptions.DEFAULT, LabBench.ANNA);
            throw new ProblemException(Problem.NOT_ACCEPTABLE, "Nobody can read that form.");
        }), Problem.NOT_ACCEPTABLE);

        assertThat(bench.rowCounts()).isEqualTo(before);
        assertThat(lab.once(KEY, LabBench.ANNA, open -> FIRST)).isEqualTo(FIRST);
    }

    @Test
    void a_refusal_the_work_catches_takes_back_just_that_step() {
        KeptAnswer answer = lab.once(KEY, LabBench.ANNA, open -> {
            assertThatThrownBy(() -> open.importSpots("A7", LabBench.upload("x"),
                LabBench.rows(LabBench.spot("P1-1", "78.8"), LabBench.spot("P1-1", "70")), ImportOptions.DEFAULT,
                LabBench.ANNA)).isInstanceOf(ProblemException.class);
            open.importSpots("A7", LabBench.upload("x"), LabBench.rows(LabBench.spot("P1-2", "70")),
                ImportOptions.DEFAULT, LabBench.ANNA);
            return FIRST;
        });

        assertThat(answer).isEqualTo(FIRST);
        assertThat(lab.sample("A7").spotCount()).isEqualTo(1);
        assertThat(bench.rowCounts()).containsEntry("spot", 1L).containsEntry("import", 1L);
    }

    @Test
    void a_rehearsal_under_a_key_keeps_the_answer_and_nothing_else() {
        lab.once(KEY, LabBench.ANNA, open -> {
            open.importSpots("A7", LabBench.upload("x"), LabBench.rows(LabBench.spot("P1-1", "78.8")),
                new ImportOptions(OnError.REFUSE, true), LabBench.ANNA);
            return FIRST;
        });

        assertThat(bench.rowCounts()).containsEntry("spot", 0L).containsEntry("import", 0L)
            .containsEntry("idempotency", 1L);
    }
}
