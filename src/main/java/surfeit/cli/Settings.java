package surfeit.cli;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.TreeMap;
import surfeit.element.Spelling;
import surfeit.storage.DatabaseAddress;

/**
 * The settings in force and where each came from, checked all together and then sealed. Immutable, thread-safe.
 */
final class Settings {
    private static final String PREFIX = "SURFEIT_";
    /** Ends the name of a variable that names a file with a secret in it. */
    private static final String FILE_SUFFIX = "_FILE";
    /** Environment variables that belong to the program but are no settings. */
    private static final List<String> NO_SETTINGS = List.of("SURFEIT_CONFIG");

    /** A value and the place it came from, in words. */
    record Value(String text, String from) {
    }

    private final Map<Setting, Value> values;

    private Settings(Map<Setting, Value> values) {
        this.values = values;
    }

    /**
     * Reads the settings: flags first, then the environment, then the file, then defaults.
     *
     * @param flags       settings given on the command line, by setting
     * @param environment the environment variables
     * @param file        the configuration file, if one is named
     * @throws SettingsException with every fault there is
     */
    static Settings read(Map<Setting, String> flags, Map<String, String> environment, Optional<Path> file) {
        List<String> faults = new ArrayList<>();
        Map<Setting, Value> values = new EnumMap<>(Setting.class);
        for (Setting setting : Setting.values()) {
            values.put(setting, new Value(setting.standard(), "default"));
        }
        file.ifPresent(path -> fromFile(path, values, faults));
        fromEnvironment(environment, values, faults);
        flags.forEach((setting, text) -> values.put(setting, new Value(text, "flag --" + setting.key())));
        values.forEach((setting, value) -> {
            try {
                setting.check(value.text());
            } catch (IllegalArgumentException e) {
                faults.add(setting.key() + " (" + value.from() + "): " + e.getMessage());
            }
        });
        if (!faults.isEmpty()) {
            throw new SettingsException(faults);
        }
        return new Settings(values);
    }

    private static void fromFile(Path path, Map<Setting, Value> values, List<String> faults) {
        Properties properties = new Properties();
        try (Reader reader = Files.newBufferedReader(path, StandardCharsets.UTF_8)) {
            properties.load(reader);
        } catch (IOException | IllegalArgumentException e) {
            faults.add("configuration file " + path + " cannot be read: " + e.getMessage());
            return;
        }
        for (String key : new TreeMap<>(properties).keySet().stream().map(String.class::cast).toList()) {
            Optional<Setting> setting = Arrays.stream(Setting.values()).filter(known -> known.key().equals(key)).findFirst();
            if (setting.isPresent()) {
                values.put(setting.get(), new Value(properties.getProperty(key), "file " + path));
            } else {
                faults.add("file " + path + " sets " + Spelling.quoted(key) + ", which is no setting" + nearest(key,
                    Arrays.stream(Setting.values()).map(Setting::key).toList()));
            }
        }
    }

    private static void fromEnvironment(Map<String, String> environment, Map<Setting, Value> values, List<String> faults) {
        for (Map.Entry<String, String> variable : new TreeMap<>(environment).entrySet()) {
            if (!variable.getKey().startsWith(PREFIX) || NO_SETTINGS.contains(variable.getKey())) {
                continue;
            }
            Optional<Setting> setting = Arrays.stream(Setting.values())
                .filter(known -> known.variable().equals(variable.getKey())).findFirst();
            if (setting.isPresent()) {
                values.put(setting.get(), new Value(variable.getValue(), "environment " + variable.getKey()));
            } else if (ofSecretFile(variable.getKey()).isPresent()) {
                fromSecretFile(ofSecretFile(variable.getKey()).get(), variable, environment, values, faults);
            } else {
                faults.add("the environment sets " + variable.getKey() + ", which is no setting" + nearest(variable.getKey(),
                    Arrays.stream(Setting.values()).map(Setting::variable).toList()));
            }
        }
    }

    /** The setting whose value stands in the file that a variable of this name names. */
    private static Optional<Setting> ofSecretFile(String variable) {
        return Arrays.stream(Setting.values()).filter(Setting::isSecret)
            .filter(known -> (known.variable() + FILE_SUFFIX).equals(variable)).findFirst();
    }

    private static void fromSecretFile(Setting setting, Map.Entry<String, String> variable,
                                       Map<String, String> environment, Map<Setting, Value> values, List<String> faults) {
        if (environment.containsKey(setting.variable())) {
            faults.add("the environment sets both " + setting.variable() + " and " + variable.getKey() + "; set one");
            return;
        }
        try {
            values.put(setting, new Value(Files.readString(Path.of(variable.getValue())),
                "file " + variable.getValue() + " of environment " + variable.getKey()));
        } catch (IOException | InvalidPathException e) {
            faults.add("the file " + variable.getValue() + " of " + variable.getKey() + " cannot be read ("
                + e.getClass().getSimpleName() + ")");
        }
    }

    private static String nearest(String text, List<String> known) {
        List<String> near = Spelling.nearest(text, known, 1);
        return near.isEmpty() ? "" : "; nearest: " + near.get(0);
    }

    String get(Setting setting) {
        return values.get(setting).text().strip();
    }

    /** The value unless it was left out. */
    Optional<String> stated(Setting setting) {
        String text = get(setting);
        return text.equals(setting.standard()) ? Optional.empty() : Optional.of(text);
    }

    /** The value as it may be shown to whoever looks. */
    String shown(Setting setting) {
        return !setting.isSecret() || stated(setting).isEmpty() ? get(setting)
            : setting == Setting.DATABASE_URL ? DatabaseAddress.shown(get(setting)) : "***";
    }

    int whole(Setting setting) {
        return Integer.parseInt(get(setting));
    }

    double number(Setting setting) {
        return Double.parseDouble(get(setting));
    }

    /** Where a value came from, in words. */
    String from(Setting setting) {
        return values.get(setting).from();
    }
}
