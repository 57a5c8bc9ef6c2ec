package surfeit.cli;

import java.util.EnumSet;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints every setting, its value, and where that came from; refuses with all faults at once. */
@Command(name = "check-config", mixinStandardHelpOptions = true,
    description = "Print every setting, its value, and where it came from.")
final class CheckConfigCommand implements Callable<Integer>, WithSettings {
    @Spec
    private CommandSpec spec;

    @Override
    public Set<Setting.Part> uses() {
        return EnumSet.allOf(Setting.Part.class);
    }

    @Override
    public Integer call() {
        Settings settings = WithSettings.settings(spec);
        for (Setting setting : Setting.values()) {
            spec.commandLine().getOut().println(setting.key() + " = " + settings.shown(setting) + "   (" + settings.from(setting) + ")");
        }
        return Main.DONE;
    }
}
