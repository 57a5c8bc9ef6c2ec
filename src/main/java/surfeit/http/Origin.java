package surfeit.http;

import jakarta.servlet.http.HttpServletRequest;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Where a request comes from, and under which address its client knows the service.
 *
 * <p>{@code X-Forwarded-For}, {@code -Proto} and {@code -Host} count only where the connection comes from a trusted
 * proxy; of several addresses the last that is not a trusted proxy's is the client's, since everything before it is
 * hearsay.
 *
 * @param client  IP address
 * @param service {@code https://lab.example.org}, without a path
 */
record Origin(String client, String service) {
    private static final Pattern HOST = Pattern.compile(
        "[A-Za-z0-9.-]{1,253}(:\\d{1,5})?|\\[[0-9A-Fa-f:.]{2,45}\\](:\\d{1,5})?");
    private static final int IPV6_NETWORK_BYTES = 8;

    static Origin of(HttpServletRequest request, TrustedProxies proxies) {
        String peer = request.getRemoteAddr();
        String own = request.getRequestURL().substring(0, request.getRequestURL().length() - request.getRequestURI()
            .length());
        if (!proxies.trusts(peer)) {
            return new Origin(peer, own);
        }
        String scheme = last(request, "X-Forwarded-Proto").filter(word -> word.equals("http") || word.equals("https"))
            .orElse(request.getScheme());
        String host = last(request, "X-Forwarded-Host").filter(name -> HOST.matcher(name).matches())
            .orElse(own.substring(own.indexOf("//") + 2));
        return new Origin(client(request, peer, proxies), scheme + "://" + host);
    }

    /** The client that a trusted proxy passes a request on for; empty where none says so, or not by addresses alone. */
    static Optional<String> forwardedFor(HttpServletRequest request, TrustedProxies proxies) {
        List<String> hops = entries(request, "X-Forwarded-For");
        boolean told = !hops.isEmpty() && hops.stream().allMatch(hop -> TrustedProxies.address(hop).isPresent());
        return told && proxies.trusts(request.getRemoteAddr())
            ? Optional.of(client(request, request.getRemoteAddr(), proxies)) : Optional.empty();
    }

    private static String client(HttpServletRequest request, String peer, TrustedProxies proxies) {
        String client = peer;
        List<String> hops = entries(request, "X-Forwarded-For");
        Collections.reverse(hops);
        for (String hop : hops) {
            Optional<InetAddress> address = TrustedProxies.address(hop);
            if (address.isEmpty()) {
                return client;
            }
            client = address.get().getHostAddress();
            if (!proxies.trusts(client)) {
                return client;
            }
        }
        return client;
    }

    /** One machine, or all of its network where a machine has any number of addresses (IPv6, the first 64 bits). */
    static String machine(String client) {
        Optional<InetAddress> address = TrustedProxies.address(client);
        if (address.isEmpty() || address.get().getAddress().length <= IPV6_NETWORK_BYTES) {
            return client;
        }
        StringBuilder network = new StringBuilder();
        for (int i = 0; i < IPV6_NETWORK_BYTES; i++) {
            network.append(Character.forDigit(address.get().getAddress()[i] >> 4 & 0xf, 16))
                .append(Character.forDigit(address.get().getAddress()[i] & 0xf, 16));
        }
        return network.toString();
    }

    private static Optional<String> last(HttpServletRequest request, String field) {
        List<String> entries = entries(request, field);
        return entries.isEmpty() ? Optional.empty() : Optional.of(entries.get(entries.size() - 1));
    }

    private static List<String> entries(HttpServletRequest request, String field) {
        List<String> entries = new ArrayList<>();
        Collections.list(request.getHeaders(field)).forEach(value -> {
            for (String entry : value.split(",")) {
                entries.add(entry.strip());
            }
        });
        return entries;
    }
}
