package surfeit.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TimeReaderTest {
    private final TimeReader berlin = new TimeReader(Optional.of(ZoneId.of("Europe/Berlin")));

    @ParameterizedTest
    @CsvSource({"2026-11-20T14:03:00+01:00, 2026-11-20T14:03+01:00",
        "2026-11-20 14:03:00.25Z, 2026-11-20T14:03:00.250Z",
        "2026-11-20t14:03:00z, 2026-11-20T14:03Z", "2026-07-20T14:03:00-04:30, 2026-07-20T14:03-04:30",
        "2026-11-20T14:03 +01:00, 2026-11-20T14:03+01:00"})
    void a_time_with_an_offset_keeps_it(String text, String expected) {
        assertThat(new TimeReader(Optional.empty()).time(text).toString()).isEqualTo(expected);
        assertThat(berlin.time(text).toString()).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"2026-11-20T14:03:00, 2026-11-20T14:03+01:00", "2026-07-20 14:03, 2026-07-20T14:03+02:00",
        "3.7.2026 09:05:07, 2026-07-03T09:05:07+02:00"})
    void a_local_time_takes_the_offset_of_the_stated_zone_on_that_day(String text, String expected) {
        assertThat(berlin.time(text).toString()).isEqualTo(expected);
        assertThatThrownBy(() -> new TimeReader(Optional.empty()).time(text)).isInstanceOf(Refusal.class)
            .extracting(refusal -> ((Refusal) refusal).code()).isEqualTo(FaultCode.TIME_WITHOUT_ZONE);
    }

    @Test
    void a_local_time_that_the_change_of_clocks_skips_or_repeats_is_refused() {
        // EU summer time: ends on the last Sunday of October, begins on the last Sunday of March (Directive
        // 2000/84/EC).
        assertThatThrownBy(() -> berlin.time("2026-10-25 02:30")).isInstanceOf(Refusal.class)
            .hasMessageContaining("repeats");
        assertThatThrownBy(() -> berlin.time("2026-03-29 02:30")).isInstanceOf(Refusal.class)
            .hasMessageContaining("skips");
        assertThat(berlin.time("2026-10-25 02:30+02:00").toString()).isEqualTo("2026-10-25T02:30+02:00");
    }

    @ParameterizedTest
    @ValueSource(strings = {"11/20/2026 14:03", "2026-11-20", "14:03", "2026-13-20T14:03:00Z", "2026-02-30 14:03",
        "31.2.2026 14:03",
        "yesterday", "2026-11-20T25:03:00Z", "2026-11-20T14:03:00+19:00", "20.11.26 14:03"})
    void what_is_no_certain_time_is_refused(String text) {
        assertThatThrownBy(() -> berlin.time(text)).isInstanceOf(Refusal.class)
            .extracting(refusal -> ((Refusal) refusal).code()).isEqualTo(FaultCode.VALUE_OUT_OF_RANGE);
    }
}
