package surfeit.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import surfeit.http.ProgramVersion;
import surfeit.segregation.answer.MethodSettings;

/** Prints the versions of program and method. */
@Command(name = "version", mixinStandardHelpOptions = true, description = "Print the versions of program, method and Java.")
final class VersionCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        spec.commandLine().getOut().println("surfeit " + ProgramVersion.VERSION + ", method version " + MethodSettings.VERSION
            + ", Java " + Runtime.version());
        return Main.DONE;
    }
}
