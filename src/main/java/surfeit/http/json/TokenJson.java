package surfeit.http.json;

import java.io.IOException;
import java.io.InputStream;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import surfeit.lab.Problem;
import surfeit.lab.TokenRequest;
import surfeit.lab.TokenScope;

/** Reads what token is wanted: {@code {"name": ..., "scopes": [...], "expires_time": ...}}. */
public final class TokenJson {
    private static final List<String> SCOPES = Arrays.stream(TokenScope.values()).map(TokenScope::word).toList();
    private static final Keys<TokenJson> KEYS = new Keys<TokenJson>("a token")
        .key("name", (in, token) -> token.name = in.text())
        .key("scopes", (in, token) -> {
            token.scopesGiven = true;
            in.array("a list of scopes", () -> token.scope(in));
        })
        .key("expires_time", (in, token) -> token.expires = time(in));

    private Optional<String> name = Optional.empty();
    private final Set<TokenScope> scopes = EnumSet.noneOf(TokenScope.class);
    private Optional<Instant> expires = Optional.empty();
    private boolean scopesGiven;

    private TokenJson() {
    }

    /** Reads the body. @throws surfeit.lab.ProblemException with every fault */
    public static TokenRequest read(InputStream body) throws IOException {
        return JsonDocument.read(body, in -> {
            TokenJson token = new TokenJson();
            if (!in.object(KEYS, token)) {
                return Optional.empty();
            }
            if (token.name.isEmpty() && in.faults().count() == 0) {
                in.missing("", "name", Problem.MALFORMED_JSON,
                    "Expected \"name\", whose the token is or what uses it.");
            }
            if (!token.scopesGiven) {
                in.missing("", "scopes", Problem.MALFORMED_JSON, "Expected \"scopes\", a list of some of "
                    + String.join(", ", SCOPES) + ".");
            }
            return Optional.of(new TokenRequest(token.name.orElse(""), token.scopes, token.expires));
        });
    }

    private void scope(JsonInput in) throws IOException {
        Optional<String> word = in.text();
        if (word.isEmpty()) {
            return;
        }
        Optional<TokenScope> scope = TokenScope.ofWord(word.get());
        if (scope.isPresent()) {
            scopes.add(scope.get());
        } else {
            in.fault(Problem.VALUE_OUT_OF_RANGE, "Expected one of " + String.join(", ", SCOPES) + "; got \""
                + JsonFaults.shown(word.get())
                + "\"" + Nearest.hint(word.get(), SCOPES));
        }
    }

    private static Optional<Instant> time(JsonInput in) throws IOException {
        Optional<String> text = in.text();
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(OffsetDateTime.parse(text.get()).toInstant());
        } catch (DateTimeException e) {
            in.fault(isLocal(text.get()) ? Problem.TIME_WITHOUT_ZONE : Problem.VALUE_OUT_OF_RANGE,
                "Expected a time with an offset such as 2027-11-20T14:03:00+01:00; got \""
                + JsonFaults.shown(text.get()) + "\".");
            return Optional.empty();
        }
    }

    private static boolean isLocal(String text) {
        try {
            LocalDateTime.parse(text);
            return true;
        } catch (DateTimeException e) {
            return false;
        }
    }
}
