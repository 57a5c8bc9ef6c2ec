package surfeit.cli;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine.Model.CommandSpec;

/** A command that is run with the program's settings. */
interface WithSettings {

    /** The settings in force for this run of the command. */
    static Settings settings(CommandSpec spec) {
        return settings(spec, Map.of());
    }

    /** @param instead flags the command itself gives where the command line does not */
    static Settings settings(CommandSpec spec, Map<Setting, String> instead) {
        return settings(key -> Optional.ofNullable(spec.findOption("--" + key).<String>getValue()), instead);
    }

    /** @param flag what the command line says of a flag */
    static Settings settings(Function<String, Optional<String>> flag, Map<Setting, String> instead) {
        Map<Setting, String> flags = new EnumMap<>(Setting.class);
        flags.putAll(instead);
        for (Setting setting : Setting.values()) {
            if (setting.isFlag()) {
                flag.apply(setting.key()).ifPresent(text -> flags.put(setting, text));
            }
        }
        Optional<String> file = flag.apply(PlainFlags.CONFIG).or(() -> Optional.ofNullable(System.getenv("SURFEIT_CONFIG")));
        return Settings.read(flags, System.getenv(), file.map(Path::of));
    }
}
