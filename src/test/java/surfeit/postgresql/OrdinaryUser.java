package surfeit.postgresql;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Runs a program as somebody without special rights. PostgreSQL refuses to run as the administrator, and build machines
 * often are just that; there the program is given a namespace of its own in which it is nobody, or the user
 * {@code nobody} itself.
 */
final class OrdinaryUser {
    /** Ways to be nobody; the first that works is taken. Not every machine allows namespaces. */
    private static final List<List<String>> WAYS = List.of(
        List.of("unshare", "-U"),
        List.of("setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"),
        List.of("runuser", "-u", "nobody", "--"));
    private static final String WAY = "surfeit.postgresql.nobody";

    private final List<String> prefix;

    private OrdinaryUser(List<String> prefix) {
        this.prefix = prefix;
    }

    /** Whoever runs the tests, or nobody where that is the administrator. */
    static OrdinaryUser find() throws IOException, InterruptedException {
        if (!said(List.of("id", "-u")).equals(Optional.of("0"))) {
            return new OrdinaryUser(List.of());
        }
        String wanted = System.getProperty(WAY, "");
        for (List<String> way : WAYS) {
            if (way.get(0).startsWith(wanted) && said(with(way, List.of("id", "-u"))).equals(Optional.of("65534"))) {
                return new OrdinaryUser(way);
            }
        }
        throw new IOException("PostgreSQL does not run as the administrator, and none of unshare, setpriv and runuser "
            + "lets it run as somebody else here. Run the tests as an ordinary user.");
    }

    /** True where files must be given to {@code nobody} to be usable. */
    boolean ownsNothing() {
        return !prefix.isEmpty() && !prefix.get(0).equals("unshare");
    }

    List<String> command(List<String> command) {
        return with(prefix, command);
    }

    private static List<String> with(List<String> prefix, List<String> command) {
        List<String> whole = new ArrayList<>(prefix);
        whole.addAll(command);
        return whole;
    }

    private static Optional<String> said(List<String> command) throws InterruptedException {
        try {
            Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
            String text = new String(process.getInputStream().readAllBytes()).strip();
            return process.waitFor() == 0 ? Optional.of(text) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }
}
