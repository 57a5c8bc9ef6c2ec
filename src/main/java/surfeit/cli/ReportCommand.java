package surfeit.cli;

import java.io.IOException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.EnumSet;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import surfeit.http.AnswerFile;
import surfeit.lab.Segregation;
import surfeit.report.figure.AnswerFigure;

/** Prints what a sample on record shows, straight from the data folder. */
@Command(name = "report", mixinStandardHelpOptions = true,
    description = "Print what a sample on record shows; the service must not be running on the data folder.")
final class ReportCommand implements Callable<Integer>, WithSettings {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "SAMPLE", description = "name of the sample")
    private String sample;

    @Option(names = "--by", paramLabel = "<feature|particle|sample>", description = "how to group the spots",
        defaultValue = "feature")
    private String by;

    @Option(names = "--format", paramLabel = "<table|json|csv|md|html|svg>", description = "how to print the answer",
        defaultValue = "md")
    private InterpretCommand.Format format;

    @Option(names = "--figure", paramLabel = "<factors|spots|contrasts|depths>",
        description = "which figure, with --format svg; factors where not said")
    private String figure;

    @Override
    public Set<Setting.Part> uses() {
        return EnumSet.of(Setting.Part.RECORD, Setting.Part.METHOD);
    }

    @Override
    public Integer call() throws IOException {
        AnswerFigure wanted = FigureWord.of(spec, figure, format);
        try (Opened opened = Opened.on(WithSettings.settings(spec))) {
            Segregation answer = opened.laboratory().segregation(sample, GroupWord.of(spec, by));
            InterpretCommand.print(new AnswerFile(answer, opened.laboratory().spotSource(answer.stored().orElseThrow()),
                Instant.now().truncatedTo(ChronoUnit.MILLIS)), sample, format, wanted, spec.commandLine().getOut());
        }
        return Main.DONE;
    }
}
