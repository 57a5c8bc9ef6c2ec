package surfeit.http;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Set;
import surfeit.element.Spelling;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/**
 * Keeps pages of other sites, opened in a browser of the lab, from changing anything here.
 *
 * <p>Browsers say where a request comes from, and no page can make them say otherwise: {@code Sec-Fetch-Site} (W3C
 * Fetch Metadata), or {@code Origin} (RFC 6454) where they do not know that. Programs send neither and are not
 * concerned; the service's own pages are of its own origin. Reading is not concerned either: without CORS a foreign page
 * cannot see an answer.
 */
final class ForeignPage {
    private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS");
    private static final Set<String> OWN = Set.of("same-origin", "none");

    private ForeignPage() {
    }

    /** @throws ProblemException scope-missing where a page of another site sent it */
    static void refuse(HttpServletRequest request, TrustedProxies proxies) {
        if (READING.contains(request.getMethod())) {
            return;
        }
        String site = request.getHeader("Sec-Fetch-Site");
        String page = request.getHeader("Origin");
        boolean foreign = site != null ? !OWN.contains(site)
            : page != null && !authority(page).equalsIgnoreCase(authority(Origin.of(request, proxies).service()));
        if (foreign) {
            throw new ProblemException(Problem.SCOPE_MISSING, "A page of another site"
                + (page == null ? "" : " (" + Spelling.quoted(page) + ")")
                + " may not change anything here; send the request from a program or from this service's own pages.");
        }
    }

    /** Name and port; the scheme may differ where a proxy ends TLS. */
    private static String authority(String origin) {
        int scheme = origin.indexOf("://");
        return scheme < 0 ? origin : origin.substring(scheme + 3);
    }
}
