package surfeit.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tokens on the command line, and what serve makes of them. */
class TokenCommandTest {
    @TempDir
    Path folder;
    private String data;

    @BeforeEach
    void name() {
        data = folder.resolve("lab").toString();
    }

    private CommandRun make(String... more) {
        String[] arguments = {"token", "new", "--data", data, "--name", "bench", "--scopes", "read,write"};
        String[] all = Arrays.copyOf(arguments, arguments.length + more.length);
        System.arraycopy(more, 0, all, arguments.length, more.length);
        return CommandRun.of((Object[]) all);
    }

    @Test
    void the_token_alone_goes_to_standard_output() {
        CommandRun run = make();
        assertThat(run.code()).isZero();
        assertThat(run.out()).matches("lab_[A-Za-z0-9_-]{43}\\R");
        assertThat(run.err()).contains("Token tok_0001 \"bench\" for read, write, until ")
            .doesNotContain(run.out().strip());
    }

    @Test
    void tokens_are_listed_without_their_secrets_and_revoked_by_id() {
        String secret = make("--days", "30").out().strip();
        CommandRun list = CommandRun.of("token", "list", "--data", data);
        assertThat(list.out()).startsWith("tok_0001  bench  (read, write)  valid until ")
            .doesNotContain(secret.substring(4));
        Instant until = Instant.parse(list.out().replaceAll("(?s).*valid until (\\S+).*", "$1"));
        assertThat(until).isBetween(Instant.now().plus(Duration.ofDays(29)), Instant.now().plus(Duration.ofDays(30)));
        assertThat(CommandRun.of("token", "revoke", "tok_0001", "--data", data).out()).isEqualTo(
            "Token tok_0001 \"bench\" is not valid any more." + System.lineSeparator());
        assertThat(CommandRun.of("token", "list", "--data", data).out()).contains("  revoked ");
        CommandRun unknown = CommandRun.of("token", "revoke", "tok_0002", "--data", data);
        assertThat(unknown.code()).isEqualTo(Main.REFUSED);
        assertThat(unknown.err()).contains("There is no token \"tok_0002\".");
    }

    @ParameterizedTest
    @ValueSource(strings = {"reed", "", "read,,write", "READ", "read,open"})
    void a_scope_that_does_not_exist_is_wrong_usage(String scopes) {
        CommandRun run = CommandRun.of("token", "new", "--data", data, "--name", "bench", "--scopes", scopes);
        assertThat(run.code()).isEqualTo(Main.WRONG_USAGE);
        assertThat(run.err()).contains("--scopes takes read, write, correct, admin and metrics");
    }

    @Test
    void a_name_in_use_and_an_impossible_number_of_days_are_refused() {
        make();
        assertThat(make().err()).contains("The valid token tok_0001 is named \"bench\" already");
        for (String days : new String[] {"0", "-1", "3651"}) {
            CommandRun run = CommandRun.of("token", "new", "--data", data, "--name", "other", "--scopes", "read",
                "--days=" + days);
            assertThat(run.code()).as(days).isEqualTo(Main.REFUSED);
        }
    }

    @Test
    void a_command_that_is_not_whole_is_wrong_usage() {
        for (String line : new String[] {"", "token", "token new --name x", "token revoke", "serve --prot 1"}) {
            assertThat(CommandRun.of((Object[]) (line.isEmpty() ? new String[0] : line.split(" "))).code()).as(line)
                .isEqualTo(Main.WRONG_USAGE);
        }
    }

    @Test
    void serve_does_not_start_for_other_machines_without_a_token_and_gives_the_folder_back() {
        CommandRun run = CommandRun.of("serve", "--data", data, "--host", "0.0.0.0", "--port", "0");
        assertThat(run.code()).isEqualTo(Main.WRONG_USAGE);
        assertThat(run.err())
            .startsWith("Cannot start: host 0.0.0.0 can be reached from other machines, and no token exists.");
        assertThat(make().code()).isZero();
    }

    @Test
    void no_auth_is_said_without_a_value_or_with_one() {
        assertThat(CommandRun.of("check-config").out()).contains("no-auth = false   (default)");
        assertThat(CommandRun.of("check-config", "--no-auth").out()).contains("no-auth = true   (flag --no-auth)");
        assertThat(CommandRun.of("check-config", "--no-auth", "--port", "1").out())
            .contains("no-auth = true", "port = 1 ");
        assertThat(CommandRun.of("check-config", "--no-auth=maybe").err())
            .contains("expected true or false, got \"maybe\"");
        assertThat(CommandRun.of("check-config", "--trusted-proxies", "10.0.0.0/8,::1").code()).isZero();
        assertThat(CommandRun.of("check-config", "--trusted-proxies", "proxy").err())
            .contains("expected IP addresses or networks");
    }
}
