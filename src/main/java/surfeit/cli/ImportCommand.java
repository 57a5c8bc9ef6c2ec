package surfeit.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import surfeit.http.FileQuestion;
import surfeit.lab.ImportOptions;
import surfeit.lab.ImportReport;
import surfeit.lab.Occasion;
import surfeit.report.VisibleText;

/** Records the spots of a file, straight into the data folder. */
@Command(name = "import", mixinStandardHelpOptions = true,
    description = "Record the spots of a file; the service must not be running on the data folder.")
final class ImportCommand implements Callable<Integer>, WithSettings {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "table (.csv .tsv .txt), .json or .ndjson")
    private Path file;

    @Option(names = "--sample", required = true, paramLabel = "<name>",
        description = "sample the spots belong to; it must be on record")
    private String sample;

    @Option(names = "--with", paramLabel = "<key=value>",
        description = "how to read the table: unit, session, time_zone, delimiter, decimal, charset")
    private Map<String, String> words = new LinkedHashMap<>();

    @Option(names = "--skip-faulty", description = "record the good rows where others have faults")
    private boolean skip;

    @Option(names = "--validate-only", description = "do everything and then take it back")
    private boolean validateOnly;

    @Override
    public Set<Setting.Part> uses() {
        return EnumSet.of(Setting.Part.RECORD, Setting.Part.METHOD, Setting.Part.TABLES);
    }

    @Override
    public Integer call() {
        Settings settings = WithSettings.settings(spec);
        InputFile.readable(file);
        try (Opened opened = Opened.on(settings)) {
            ImportOptions options = new ImportOptions(skip ? ImportOptions.OnError.SKIP : ImportOptions.OnError.REFUSE, validateOnly);
            ImportReport report = opened.laboratory().imports().record(sample, FileQuestion.upload(file),
                FileQuestion.rows(file, words, ServiceSettings.intake(settings)), options,
                new Occasion(System.getProperty("user.name"), Instant.now()),
                new ProgressLines(spec.commandLine().getErr()));
            print(report, spec.commandLine().getOut());
            return report.rejectedCount() == 0 ? Main.DONE : Main.REFUSED;
        }
    }

    private void print(ImportReport report, PrintWriter out) {
        out.println((validateOnly ? "Would record " : "Recorded ") + report.acceptedCount() + ", already known "
            + report.unchangedCount() + ", rejected " + report.rejectedCount() + " spots of " + file.getFileName() + ".");
        report.dialect().ifPresent(dialect -> out.println("Read as " + dialect.charset()
            + dialect.delimiter().map(d -> ", delimiter " + d).orElse("")
            + dialect.decimal().map(d -> ", decimal mark " + d).orElse("")
            + dialect.unit().map(u -> ", unit " + u).orElse("") + " (" + dialect.decidedBy() + ")."));
        report.leftOut().forEach(left -> out.println(VisibleText.line("Left out: " + PlaceWords.of(left.place())
            + left.reason() + left.label().map(label -> " (" + label + ")").orElse(""))));
        report.faults().forEach(fault -> out.println("Refused: " + Refusal.line(fault)));
    }
}
