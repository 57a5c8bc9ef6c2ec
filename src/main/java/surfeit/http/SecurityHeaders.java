package surfeit.http;

import java.util.Map;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.Request;

/**
 * Header fields of every answer that keep browsers from doing more with it than show it: no guessing of types, no
 * frames, no use by pages of other sites, nothing loaded from anywhere. Pages that need more state their own policy.
 *
 * <p>No {@code Access-Control-Allow-*} field is ever sent: pages of other sites cannot read answers.
 */
final class SecurityHeaders implements HttpConfiguration.Customizer {
    static final String POLICY = "Content-Security-Policy";
    static final Map<String, String> ALL = Map.of(
        "X-Content-Type-Options", "nosniff",
        "X-Frame-Options", "DENY",
        "Referrer-Policy", "no-referrer",
        POLICY, "default-src 'none'; frame-ancestors 'none'",
        "Cross-Origin-Resource-Policy", "same-origin",
        "Cross-Origin-Opener-Policy", "same-origin",
        "Cross-Origin-Embedder-Policy", "require-corp");

    @Override
    public Request customize(Request request, HttpFields.Mutable answer) {
        put(answer);
        return request;
    }

    static void put(HttpFields.Mutable answer) {
        ALL.forEach(answer::put);
    }
}
