package surfeit.cli;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Flags that are settings, each said once: {@code --port 8080}, {@code --port=8080}, {@code --no-auth}. Whoever starts a
 * service writes no more than that, and read here it needs none of picocli's classes, which are a fifth of a start: no
 * archive of classes takes them. Anything else is left to picocli, and so is every word on what is wrong.
 */
final class PlainFlags {
    static final String CONFIG = "config";

    private PlainFlags() {
    }

    /** What is said of each flag; empty where something is not understood. */
    static Optional<Map<String, String>> read(List<String> words) {
        Map<String, String> said = new HashMap<>();
        for (int i = 0; i < words.size(); i++) {
            String word = words.get(i);
            int end = word.contains("=") ? word.indexOf('=') : word.length();
            String key = word.startsWith("--") ? word.substring(2, end) : "";
            boolean apart = end == word.length() && i + 1 < words.size() && !words.get(i + 1).startsWith("-");
            String value = end < word.length() ? word.substring(end + 1) : apart ? words.get(++i) : alone(key);
            if (!isFlag(key) || value.isEmpty() || value.startsWith("@") || said.put(key, value) != null) {
                return Optional.empty();
            }
        }
        return Optional.of(said);
    }

    private static boolean isFlag(String key) {
        return key.equals(CONFIG)
            || Arrays.stream(Setting.values()).anyMatch(setting -> setting.isFlag() && setting.key().equals(key));
    }

    /** What a flag without a value says. */
    private static String alone(String key) {
        return Arrays.stream(Setting.values()).anyMatch(setting -> setting.isYesOrNo() && setting.key().equals(key))
            ? "true" : "";
    }
}
