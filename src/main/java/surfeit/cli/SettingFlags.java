package surfeit.cli;

import java.util.Arrays;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgGroupSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The settings a command has a use for, as flags that its help lists below its own. */
final class SettingFlags {
    private SettingFlags() {
    }

    /** Adds them to every command below that is run with settings. */
    static void addBelow(CommandLine line) {
        for (CommandLine command : line.getSubcommands().values()) {
            if (command.getCommand() instanceof WithSettings user) {
                add(command, user);
            }
            addBelow(command);
        }
    }

    private static void add(CommandLine command, WithSettings user) {
        CommandSpec spec = command.getCommandSpec();
        CommandLine.Help own = command.getHelp();
        String synopsis = own.synopsis(own.synopsisHeadingLength()).stripTrailing();
        ArgGroupSpec.Builder group = ArgGroupSpec.builder().validate(false)
            .heading("%nSettings, which the environment or a configuration file may give too (check-config lists them):%n");
        Arrays.stream(Setting.values()).filter(setting -> setting.isFlag() && user.uses().contains(setting.part()))
            .forEach(setting -> group.addArg(flag(setting, user.standards().getOrDefault(setting, setting.standard()))));
        group.addArg(OptionSpec.builder("--" + PlainFlags.CONFIG).type(String.class).paramLabel("<file>")
            .description("configuration file, lines of the form port = 8420").build());
        spec.addArgGroup(group.build());
        spec.usageMessage().sortOptions(false).customSynopsis(synopsis.split("\\R"));
    }

    private static OptionSpec flag(Setting setting, String standard) {
        OptionSpec.Builder option = OptionSpec.builder("--" + setting.key()).type(String.class)
            .paramLabel("<" + setting.unit() + ">").description(setting.meaning() + " (default " + standard + ")");
        return setting.isYesOrNo() ? option.arity("0..1").fallbackValue("true").build() : option.build();
    }
}
