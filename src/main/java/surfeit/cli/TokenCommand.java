package surfeit.cli;

import java.io.PrintWriter;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import surfeit.lab.Access;
import surfeit.lab.IssuedToken;
import surfeit.lab.Occasion;
import surfeit.lab.PageRequest;
import surfeit.lab.Token;
import surfeit.lab.TokenRequest;
import surfeit.lab.TokenScope;
import surfeit.lab.TokenSecret;

/** Makes, lists and revokes tokens, straight in the data folder: the first one is made so. */
@Command(name = "token", mixinStandardHelpOptions = true,
    description = "Make, list or revoke tokens; the service must not be running on the data folder.",
    subcommands = {TokenCommand.NewToken.class, TokenCommand.ListTokens.class, TokenCommand.RevokeToken.class})
final class TokenCommand implements Runnable {
    private static final int TOKENS_AT_ONCE = 1000;

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Name what to do: token new, token list or token revoke.");
    }

    private static Occasion now() {
        return new Occasion(System.getProperty("user.name"), Instant.now());
    }

    /**
     * Prints the token alone to standard output, so that a script can take it, and everything else to standard error.
     */
    @Command(name = "new", mixinStandardHelpOptions = true, description = "Make a token and print it, once.")
    static final class NewToken implements Callable<Integer>, WithSettings {
        @Spec
        private CommandSpec spec;

        @Option(names = "--name", required = true, paramLabel = "<name>",
            description = "whose it is; stands in the record as who")
        private String name;

        @Option(names = "--scopes", required = true, split = ",", paramLabel = "<scope>",
            description = "what it is for, with commas between: read, write, correct, admin, metrics; none includes "
                + "another")
        private List<String> scopes;

        @Option(names = "--days", defaultValue = "365", paramLabel = "<days>",
            description = "days until it expires (default 365)")
        private int days;

        @Override
        public Set<Setting.Part> uses() {
            return EnumSet.of(Setting.Part.RECORD);
        }

        @Override
        public Integer call() {
            Set<TokenScope> wanted = EnumSet.noneOf(TokenScope.class);
            scopes.forEach(word -> wanted.add(TokenScope.ofWord(word.strip())
                .orElseThrow(() -> new ParameterException(spec.commandLine(),
                "--scopes takes read, write, correct, admin and metrics, got \"" + word + "\"."))));
            byte[] random = new byte[TokenSecret.RANDOM_BYTES];
            new SecureRandom().nextBytes(random);
            Occasion occasion = now();
            try (Opened opened = Opened.on(WithSettings.settings(spec))) {
                Optional<Instant> expires = Optional.of(occasion.when().plus(Duration.ofDays(days)));
                IssuedToken issued = opened.laboratory().access().issue(new TokenRequest(name, wanted, expires), random,
                    occasion);
                spec.commandLine().getOut().println(issued.secret());
                spec.commandLine().getErr().println("Token " + issued.token().id() + " \"" + name + "\" for "
                    + issued.token().words()
                    + ", until " + issued.token().expires()
                    + ". It is shown only now; keep it where the client reads it.");
            }
            return Main.DONE;
        }
    }

    @Command(name = "list", mixinStandardHelpOptions = true, description = "List all tokens, without their secrets.")
    static final class ListTokens implements Callable<Integer>, WithSettings {
        @Spec
        private CommandSpec spec;

        @Override
        public Set<Setting.Part> uses() {
            return EnumSet.of(Setting.Part.RECORD);
        }

        @Override
        public Integer call() {
            try (Opened opened = Opened.on(WithSettings.settings(spec))) {
                Access access = opened.laboratory().access();
                Optional<String> after = Optional.empty();
                do {
                    var page = access.tokens(new PageRequest(TOKENS_AT_ONCE, after));
                    page.items().forEach(token -> print(token, Instant.now(), spec.commandLine().getOut()));
                    after = page.next();
                } while (after.isPresent());
            }
            return Main.DONE;
        }

        private static void print(Token token, Instant now, PrintWriter out) {
            String state = token.revoked().map(by -> "revoked " + by.when() + " by " + by.who())
                .orElse((token.isValid(now) ? "valid until " : "expired ") + token.expires());
            out.println(token.id() + "  " + token.name() + "  (" + token.words() + ")  " + state + "  made "
                + token.created().when()
                + " by " + token.created().who());
        }
    }

    @Command(name = "revoke", mixinStandardHelpOptions = true,
        description = "Take a token back; it is not valid any more.")
    static final class RevokeToken implements Callable<Integer>, WithSettings {
        @Spec
        private CommandSpec spec;

        @Parameters(paramLabel = "ID", description = "id of the token, as token list shows it")
        private String id;

        @Override
        public Set<Setting.Part> uses() {
            return EnumSet.of(Setting.Part.RECORD);
        }

        @Override
        public Integer call() {
            try (Opened opened = Opened.on(WithSettings.settings(spec))) {
                Token token = opened.laboratory().access().revoke(id, now());
                spec.commandLine().getOut().println("Token " + token.id() + " \"" + token.name()
                    + "\" is not valid any more.");
            }
            return Main.DONE;
        }
    }
}
