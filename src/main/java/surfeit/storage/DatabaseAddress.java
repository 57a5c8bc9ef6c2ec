package surfeit.storage;

import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Where a database server keeps the record, and as whom to ask it.
 *
 * @param url      {@code jdbc:postgresql://host:5432/database}, with parameters of the driver
 * @param user     absent where the address names it, or the operating system's user is meant
 * @param password absent where none is asked for, or the driver finds it itself
 */
public record DatabaseAddress(String url, Optional<String> user, Optional<String> password) {
    private static final String BEGINNING = "jdbc:postgresql:";
    private static final Pattern SECRET = Pattern.compile("(?i)([?&][a-z]*password=)[^&]*");

    /** @throws IllegalArgumentException saying what was expected */
    public DatabaseAddress {
        check(url);
    }

    /** Refuses what cannot be an address. @throws IllegalArgumentException saying what was expected */
    public static void check(String url) {
        if (!url.startsWith(BEGINNING)) {
            throw new IllegalArgumentException("expected an address like jdbc:postgresql://host:5432/database, got \""
                + shown(url) + "\"");
        }
    }

    /** The address without passwords, fit for a log. */
    public static String shown(String url) {
        return SECRET.matcher(url).replaceAll("$1***").replaceAll("//[^/@?]*@", "//***@");
    }

    /** The same, for messages: passwords and parameters left out. */
    @Override
    public String toString() {
        return shown(url).replaceAll("\\?.*", "");
    }
}
