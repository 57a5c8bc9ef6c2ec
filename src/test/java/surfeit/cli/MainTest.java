package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class MainTest {

    @Test
    void wrong_usage_has_exit_code_two_whatever_is_wrong() {
        assertThat(CommandRun.of("no-such-command").code()).isEqualTo(2);
        assertThat(CommandRun.of().code()).isEqualTo(2);
        assertThat(CommandRun.of("serve", "--no-such-flag").code()).isEqualTo(2);
        assertThat(CommandRun.of("backup").code()).isEqualTo(2);
        assertThat(CommandRun.of("check-config", "--port", "x").code()).isEqualTo(2);
        assertThat(CommandRun.of("version").code()).isZero();
    }
}
