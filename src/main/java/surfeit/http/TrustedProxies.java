package surfeit.http;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Machines in front of the service whose word on the client's address is taken. Immutable, thread-safe. */
public final class TrustedProxies {
    /** No machine's word is taken. */
    public static final TrustedProxies NONE = new TrustedProxies(List.of());
    private static final String NONE_WORD = "none";
    private static final String BYTE = "(25[0-5]|2[0-4]\\d|1?\\d?\\d)";
    private static final Pattern IPV4 = Pattern.compile(BYTE + "(\\." + BYTE + "){3}");
    private static final Pattern IPV6 = Pattern.compile("[0-9A-Fa-f:.]*:[0-9A-Fa-f:.]*");

    private final List<Network> networks;

    private TrustedProxies(List<Network> networks) {
        this.networks = List.copyOf(networks);
    }

    private record Network(byte[] address, int bits) {
        boolean holds(byte[] other) {
            if (other.length != address.length) {
                return false;
            }
            for (int bit = 0; bit < bits; bit++) {
                int mask = 0x80 >> bit % 8;
                if ((address[bit / 8] & mask) != (other[bit / 8] & mask)) {
                    return false;
                }
            }
            return true;
        }
    }

    /**
     * Reads addresses and networks with commas between, {@code 10.0.0.5, 192.168.7.0/24}, or the word {@code none}.
     *
     * @throws IllegalArgumentException saying what was expected
     */
    public static TrustedProxies of(String text) {
        if (text.strip().equals(NONE_WORD)) {
            return NONE;
        }
        List<Network> networks = new ArrayList<>();
        for (String part : text.split(",", -1)) {
            networks.add(network(part.strip()));
        }
        return new TrustedProxies(networks);
    }

    private static Network network(String text) {
        int slash = text.indexOf('/');
        Optional<InetAddress> address = address(slash < 0 ? text : text.substring(0, slash));
        int most = address.map(a -> a.getAddress().length * 8).orElse(0);
        int bits = slash < 0 ? most : bits(text.substring(slash + 1));
        if (address.isEmpty() || bits < 0 || bits > most) {
            throw new IllegalArgumentException("expected IP addresses or networks such as 192.168.7.0/24, or "
                + NONE_WORD
                + ", got \"" + text + "\"");
        }
        return new Network(address.get().getAddress(), bits);
    }

    private static int bits(String text) {
        return text.matches("\\d{1,3}") ? Integer.parseInt(text) : -1;
    }

    /** The IP address a text is; empty where it is a name or anything else. Never asks a name server. */
    static Optional<InetAddress> address(String text) {
        String plain = text.startsWith("[") && text.endsWith("]") ? text.substring(1, text.length() - 1) : text;
        if (!IPV4.matcher(plain).matches() && !IPV6.matcher(plain).matches()) {
            return Optional.empty();
        }
        try {
            return Optional.of(InetAddress.getByName(plain));
        } catch (UnknownHostException e) {
            return Optional.empty();
        }
    }

    /** True for an address whose word is taken. */
    boolean trusts(String address) {
        return address(address).map(found -> networks.stream().anyMatch(network -> network.holds(found.getAddress())))
            .orElse(false);
    }
}
