package surfeit.http;

import java.util.Locale;
import java.util.Optional;

/** Parameters of a header field: {@code text/csv; charset="utf-8"}. */
final class HeaderParameters {
    private HeaderParameters() {
    }

    /** The value of a parameter without its quotes; empty where there is none. */
    static Optional<String> of(String field, String name) {
        if (field == null) {
            return Optional.empty();
        }
        String[] parts = field.split(";");
        for (int i = 1; i < parts.length; i++) {
            String part = parts[i].strip();
            if (part.toLowerCase(Locale.ROOT).startsWith(name + "=")) {
                String value = part.substring(name.length() + 1).strip();
                boolean quoted = value.length() >= 2 && value.startsWith("\"") && value.endsWith("\"");
                String plain = quoted ? value.substring(1, value.length() - 1) : value;
                return plain.isEmpty() ? Optional.empty() : Optional.of(plain);
            }
        }
        return Optional.empty();
    }
}
