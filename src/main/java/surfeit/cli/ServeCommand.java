package surfeit.cli;

import java.util.EnumSet;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Runs the service until it is told to stop. */
@Command(name = ServeCommand.NAME, mixinStandardHelpOptions = true, description = "Run the service until it is told to stop.")
final class ServeCommand implements Callable<Integer>, WithSettings {
    static final String NAME = "serve";

    @Spec
    private CommandSpec spec;

    @Override
    public Set<Setting.Part> uses() {
        return EnumSet.allOf(Setting.Part.class);
    }

    @Override
    public Integer call() throws InterruptedException {
        return Service.run(WithSettings.settings(spec), spec.commandLine().getOut(), spec.commandLine().getErr());
    }
}
