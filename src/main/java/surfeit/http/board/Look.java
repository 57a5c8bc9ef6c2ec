package surfeit.http.board;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * How a reader wants the pages to look; links keep what was chosen.
 *
 * @param numbers how numbers look
 * @param chosen  true where the reader chose it, false where it follows the language of the browser
 */
public record Look(NumberDisplay numbers, boolean chosen) {
    /** Where the samples are listed. */
    public static final String SAMPLES = "/samples";

    /** An address of the board that keeps the look. */
    String address(String path) {
        return address(path, Map.of());
    }

    /** The same with parameters; empty ones are left out. */
    String address(String path, Map<String, String> parameters) {
        Map<String, String> all = new LinkedHashMap<>(parameters);
        if (chosen) {
            all.put("numbers", numbers.word());
        }
        return query(path, all);
    }

    /** An address with parameters; empty ones are left out. */
    static String query(String path, Map<String, String> parameters) {
        StringBuilder address = new StringBuilder(path);
        char separator = '?';
        for (Map.Entry<String, String> parameter : parameters.entrySet()) {
            if (!parameter.getValue().isEmpty()) {
                address.append(separator).append(parameter.getKey()).append('=')
                    .append(URLEncoder.encode(parameter.getValue(), StandardCharsets.UTF_8));
                separator = '&';
            }
        }
        return address.toString();
    }

    /** The look with numbers the other way. */
    Look other() {
        return new Look(numbers.other(), true);
    }
}
