package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import surfeit.lab.Expectation;
import surfeit.lab.Laboratory;
import surfeit.lab.Occasion;
import surfeit.lab.ProblemException;
import surfeit.lab.RecentSamples;
import surfeit.lab.SampleFilter;
import surfeit.lab.StoredSample;
import surfeit.spot.Sample;

/** Samples on record, the last changed first. */
@OnBothEngines
class RecentSamplesTest {
    private static final Instant DAY = Instant.parse("2026-11-20T00:00:00Z");

    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;
    private LabBench bench;
    private Laboratory lab;

    @BeforeEach
    void open() {
        bench = LabBench.in(engine, folder);
        lab = bench.laboratory();
        put("whole-second", "ag-cu-eutectic", "2026-11-20T10:00:00Z");
        put("millis-later", "ag-cu-eutectic", "2026-11-20T10:00:00.250Z");
        put("same-time", "bi58sn42", "2026-11-20T10:00:00Z");
        put("day-before", "ag-cu-eutectic", "2026-11-19T23:59:59.999Z");
    }

    @AfterEach
    void close() {
        bench.close();
    }

    private void put(String name, String alloy, String time) {
        Sample sample = Sample.of(Optional.of(alloy), Optional.empty());
        Expectation present = lab.recentSamples(RecentSamples.ALL, 100).stream().anyMatch(s -> s.name().equals(name))
            ? Expectation.EXISTING : Expectation.NONE;
        lab.describe(name, sample, present, new Occasion("test", Instant.parse(time)));
    }

    private List<String> names(RecentSamples wanted, int limit) {
        return lab.recentSamples(wanted, limit).stream().map(StoredSample::name).toList();
    }

    @Test
    void later_changes_come_first_to_the_last_digit_and_equal_times_go_by_name() {
        assertThat(names(RecentSamples.ALL, 10)).containsExactly("millis-later", "same-time", "whole-second",
            "day-before");
    }

    @Test
    void times_with_any_number_of_digits_are_in_order() {
        List<String> times = List.of("2026-11-21T10:00:00Z", "2026-11-21T10:00:00.000001Z", "2026-11-21T10:00:00.001Z",
            "2026-11-21T10:00:00.001000001Z", "2026-11-21T10:00:00.010Z", "2026-11-21T10:00:00.099999999Z",
            "2026-11-21T10:00:00.100Z", "2026-11-21T10:00:01Z", "2026-11-21T10:00:10Z", "2026-11-21T10:01:00Z");
        for (String time : List.copyOf(times)) {
            put("t" + times.indexOf(time), "ag-cu-eutectic", time);
        }
        assertThat(names(RecentSamples.ALL, 10)).containsExactly("t9", "t8", "t7", "t6", "t5", "t4", "t3", "t2", "t1",
            "t0");
        assertThat(names(new RecentSamples(SampleFilter.ALL, Optional.of(Instant.parse(times.get(2))),
            Optional.of(Instant.parse(times.get(6))), Optional.empty()), 10)).containsExactly("t5", "t4", "t3", "t2");
    }

    @Test
    void a_change_brings_a_sample_to_the_front() {
        put("day-before", "bi58sn42", "2026-11-21T08:00:00Z");
        assertThat(names(RecentSamples.ALL, 1)).containsExactly("day-before");
    }

    @Test
    void a_list_goes_on_after_any_of_its_samples_with_nothing_twice_and_nothing_left_out() {
        RecentSamples rest = RecentSamples.ALL;
        for (String expected : List.of("millis-later", "same-time", "whole-second", "day-before")) {
            StoredSample next = lab.recentSamples(rest, 1).get(0);
            assertThat(next.name()).isEqualTo(expected);
            rest = rest.after(RecentSamples.Place.ofKey(RecentSamples.Place.of(next).key()));
        }
        assertThat(lab.recentSamples(rest, 1)).isEmpty();
    }

    @Test
    void filters_hold_by_alloy_text_and_time_of_the_last_change() {
        assertThat(names(new RecentSamples(new SampleFilter(Optional.of("bi58sn42"), Optional.empty()),
            Optional.empty(),
            Optional.empty(), Optional.empty()), 10)).containsExactly("same-time");
        assertThat(names(new RecentSamples(new SampleFilter(Optional.empty(), Optional.of("TIME")), Optional.empty(),
            Optional.empty(), Optional.empty()), 10)).containsExactly("same-time");
        assertThat(names(new RecentSamples(SampleFilter.ALL, Optional.of(DAY), Optional.empty(), Optional.empty()), 10))
            .hasSize(3).doesNotContain("day-before");
        assertThat(names(new RecentSamples(SampleFilter.ALL, Optional.empty(), Optional.of(DAY), Optional.empty()), 10))
            .containsExactly("day-before");
        assertThat(names(new RecentSamples(SampleFilter.ALL, Optional.of(Instant.parse("2026-11-20T10:00:00Z")),
            Optional.of(Instant.parse("2026-11-20T10:00:00.250Z")), Optional.empty()), 10))
            .containsExactly("same-time", "whole-second");
    }

    @Test
    void a_place_that_is_none_is_refused() {
        for (String key : new String[] {"", "A7", "2026-11-20~A7", "2026-99-20T10:00:00Z~A7", "~"}) {
            assertThatThrownBy(() -> RecentSamples.Place.ofKey(key)).isInstanceOf(ProblemException.class);
        }
    }
}
