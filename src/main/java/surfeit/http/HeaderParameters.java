package surfeit.http;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Parameters of a header field: {@code text/csv; charset="utf-8"}. */
final class HeaderParameters {
    private static final String UTF_8 = "utf-8'";

    private HeaderParameters() {
    }

    /** The value of a parameter without its quotes; empty where there is none. */
    static Optional<String> of(String field, String name) {
        int from = field == null ? -1 : field.indexOf(';');
        int equals = from < 0 ? -1 : field.indexOf('=', from);
        while (equals >= 0) {
            String found = field.substring(field.lastIndexOf(';', equals) + 1, equals).strip();
            String rest = field.substring(equals + 1).stripLeading();
            boolean quoted = rest.startsWith("\"") && closing(rest) > 0;
            int end = quoted ? closing(rest) + 1 : rest.indexOf(';') < 0 ? rest.length() : rest.indexOf(';');
            if (found.equalsIgnoreCase(name)) {
                String plain = quoted ? unquoted(rest.substring(1, end - 1)) : rest.substring(0, end).strip();
                return plain.isEmpty() ? Optional.empty() : Optional.of(plain);
            }
            int next = field.indexOf(';', field.length() - rest.length() + end);
            equals = next < 0 ? -1 : field.indexOf('=', next);
        }
        return Optional.empty();
    }

    /** Where the quotes end that a text begins with; -1 where they do not. */
    private static int closing(String text) {
        for (int i = 1; i < text.length(); i++) {
            if (text.charAt(i) == '"') {
                return i;
            }
            i += text.charAt(i) == '\\' ? 1 : 0;
        }
        return -1;
    }

    /** Without what guards quotes and guards; other backslashes stay, as they come in paths. */
    private static String unquoted(String text) {
        return text.replaceAll("\\\\([\"\\\\])", "$1");
    }

    /** The file's name a Content-Disposition says; in UTF-8 as {@code filename*} where it does so (RFC 6266, RFC 8187). */
    static Optional<String> fileName(String disposition) {
        return of(disposition, "filename*").flatMap(HeaderParameters::extended).or(() -> of(disposition, "filename"));
    }

    private static Optional<String> extended(String value) {
        int second = value.indexOf('\'', UTF_8.length());
        if (second < 0 || !value.regionMatches(true, 0, UTF_8, 0, UTF_8.length())) {
            return Optional.empty();
        }
        try {
            String name = URLDecoder.decode(value.substring(second + 1).replace("+", "%2B"), StandardCharsets.UTF_8);
            return name.isEmpty() || name.chars().anyMatch(Character::isISOControl) ? Optional.empty() : Optional.of(name);
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
