package surfeit.cli;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** A command that is run with the program's settings. */
interface WithSettings {

    /** What the settings that it takes as flags are about. */
    Set<Setting.Part> uses();

    /** What a setting is for this command where nobody says anything, if not what it is elsewhere. */
    default Map<Setting, String> standards() {
        return Map.of();
    }

    /** The settings in force for this run of the command. */
    static Settings settings(CommandSpec spec) {
        return settings(key -> Optional.ofNullable(spec.findOption("--" + key)).map(OptionSpec::getValue),
            ((WithSettings) spec.userObject()).standards());
    }

    /**
     * @param flag      what the command line says of a flag
     * @param standards as {@link #standards}
     */
    static Settings settings(Function<String, Optional<String>> flag, Map<Setting, String> standards) {
        Map<Setting, String> flags = new EnumMap<>(Setting.class);
        flags.putAll(standards);
        for (Setting setting : Setting.values()) {
            if (setting.isFlag()) {
                flag.apply(setting.key()).ifPresent(text -> flags.put(setting, text));
            }
        }
        Optional<String> file = flag.apply(PlainFlags.CONFIG).or(() -> Optional.ofNullable(System.getenv("SURFEIT_CONFIG")));
        return Settings.read(flags, System.getenv(), file.map(Path::of));
    }
}
