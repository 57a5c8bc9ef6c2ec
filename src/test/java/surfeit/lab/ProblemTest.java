package surfeit.lab;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ProblemTest {

    @Test
    void the_catalogue_lists_every_code_of_the_service_with_its_status() {
        assertThat(Arrays.stream(Problem.values()).map(problem -> problem.status() + " " + problem.code()).toList())
            .containsExactlyInAnyOrder(
                "422 unreadable-table", "422 mixed-decimal-marks", "422 duplicate-spot", "422 name-invalid",
                "422 unknown-element", "422 value-out-of-range", "422 unit-missing", "422 time-without-zone",
                "422 reason-required", "422 alloy-unknown", "422 nominal-incomplete", "422 too-few-elements",
                "409 spot-already-recorded", "409 idempotency-key-in-progress", "422 idempotency-key-reused",
                "412 revision-mismatch", "428 revision-required", "400 cursor-mismatch", "400 unknown-parameter",
                "400 malformed-json", "400 malformed-request", "408 request-timeout", "413 upload-too-large",
                "414 address-too-long", "431 headers-too-large", "415 unsupported-media-type", "406 not-acceptable",
                "401 token-missing",
                "401 token-rejected", "403 scope-missing", "404 not-found", "405 method-not-allowed",
                "429 quota-exceeded", "500 internal", "507 storage-full", "503 shutting-down", "503 storage-unavailable",
                "503 overloaded");
    }

    @Test
    void every_problem_explains_itself_and_says_what_to_do() {
        assertThat(Problem.values()).allSatisfy(problem -> {
            assertThat(problem.title()).isNotBlank().doesNotEndWith(".");
            assertThat(problem.explanation()).endsWith(".");
            assertThat(problem.whatToDo()).endsWith(".");
            assertThat(Problem.ofCode(problem.code())).contains(problem);
        });
        assertThat(Problem.ofCode("no-such-code")).isEmpty();
    }

    @Test
    void a_refusal_tells_the_first_hundred_faults_and_the_true_count() {
        List<Fault> many = Collections.nCopies(150, Fault.at(Place.line(3), Problem.UNIT_MISSING, "No unit."));

        ProblemException refusal = new ProblemException(Problem.UNIT_MISSING, "No unit.", many, 4000, Optional.empty());

        assertThat(refusal.faults()).hasSize(100);
        assertThat(refusal.faultCount()).isEqualTo(4000);
        assertThat(refusal.withSetting("upload-rows-max").setting()).contains("upload-rows-max");
    }
}
