package surfeit.http;

import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/**
 * The token a request shows: {@code Authorization: Bearer lab_…} (RFC 6750), or Basic with the token as password and
 * any user name (RFC 7617), for spreadsheets and dashboards that know nothing else. Messages never repeat what was
 * shown.
 */
final class Credentials {
    private static final String FIELD = "Authorization";
    private static final String EXPECTED = "Expected Authorization: Bearer lab_…, or Basic with the token as password";

    private Credentials() {
    }

    /** @throws ProblemException token-missing, token-rejected, malformed-request */
    static String token(HttpServletRequest request) {
        List<String> fields = Collections.list(request.getHeaders(FIELD));
        if (fields.isEmpty()) {
            throw new ProblemException(Problem.TOKEN_MISSING, EXPECTED + "; got no Authorization.");
        }
        if (fields.size() > 1) {
            throw new ProblemException(Problem.MALFORMED_REQUEST, "Expected one header field Authorization, got "
                + fields.size() + ".");
        }
        String[] parts = fields.get(0).strip().split(" +", 2);
        String rest = parts.length < 2 ? "" : parts[1].strip();
        return switch (parts[0].toLowerCase(Locale.ROOT)) {
            case "bearer" -> rest;
            case "basic" -> password(rest).orElseThrow(() -> new ProblemException(Problem.TOKEN_REJECTED,
                "Expected Basic with a user name and, after a colon, the token, both in Base64; got something else."));
            default -> throw new ProblemException(Problem.TOKEN_MISSING, EXPECTED + "; got another scheme.");
        };
    }

    private static Optional<String> password(String encoded) {
        try {
            String pair = new String(Base64.getDecoder().decode(encoded), StandardCharsets.UTF_8);
            int colon = pair.indexOf(':');
            return colon < 0 ? Optional.empty() : Optional.of(pair.substring(colon + 1));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
