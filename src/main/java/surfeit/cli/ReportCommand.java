package surfeit.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Prints what a sample on record shows, straight from the data folder. */
@Command(name = "report", mixinStandardHelpOptions = true,
    description = "Print what a sample on record shows; the service must not be running on the data folder.")
final class ReportCommand implements Callable<Integer>, WithSettings {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "SAMPLE", description = "name of the sample")
    private String sample;

    @Option(names = "--by", paramLabel = "<feature|particle|sample>", description = "how to group the spots", defaultValue = "feature")
    private String by;

    @Option(names = "--format", paramLabel = "<table|json|csv|md>", description = "how to print the answer", defaultValue = "md")
    private InterpretCommand.Format format;

    @Override
    public Integer call() throws IOException {
        try (Opened opened = Opened.on(WithSettings.settings(spec))) {
            InterpretCommand.print(opened.laboratory().segregation(sample, GroupWord.of(spec, by)), sample, format,
                spec.commandLine().getOut());
        }
        return Main.DONE;
    }
}
