package surfeit.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import surfeit.composition.AlloyCatalogue;
import surfeit.http.AnswerFile;
import surfeit.http.FileQuestion;
import surfeit.lab.Segregation;
import surfeit.lab.UnrecordedAnswers;
import surfeit.report.Signs;
import surfeit.report.TerminalReport;
import surfeit.report.figure.AnswerFigure;
import surfeit.segregation.Interpreter;
import surfeit.segregation.blocks.SpotSource;

/** Interprets a file of spots without a service and without a record. */
@Command(name = "interpret", mixinStandardHelpOptions = true,
    description = "Say what a file of spots shows; nothing is stored and no service is needed.")
final class InterpretCommand implements Callable<Integer>, WithSettings {
    /** How the answer is printed. */
    enum Format { table, json, csv, md, html, svg }

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "table (.csv .tsv .txt), .ndjson, or .json with the sample in it")
    private Path file;

    @Option(names = "--alloy", paramLabel = "<id>",
        description = "alloy of the catalogue to compare with, e.g. ag-cu-eutectic; the command alloys lists them")
    private String alloy;

    @Option(names = "--nominal", paramLabel = "<composition>",
        description = "nominal composition in its place, e.g. Ag:60.1,Cu:39.9; needs --unit")
    private String nominal;

    @Option(names = "--unit", paramLabel = "<unit>",
        description = "at%% or wt%%: unit of --nominal and of columns that name none")
    private String unit;

    @Option(names = "--sample", paramLabel = "<file>",
        description = "JSON file that describes the sample, in place of --alloy or --nominal")
    private Path sample;

    @Option(names = "--with", paramLabel = "<key=value>",
        description = "any other word of a sample or of how to read the table, e.g. accuracy_class=standards-based")
    private Map<String, String> words = new LinkedHashMap<>();

    @Option(names = "--by", paramLabel = "<feature|particle|sample>", description = "how to group the spots",
        defaultValue = "feature")
    private String by;

    @Option(names = "--format", paramLabel = "<table|json|csv|md|html|svg>", description = "how to print the answer",
        defaultValue = "table")
    private Format format;

    @Option(names = "--figure", paramLabel = "<factors|spots|contrasts|depths>",
        description = "which figure, with --format svg; factors where not said")
    private String figure;

    @Override
    public Set<Setting.Part> uses() {
        return EnumSet.of(Setting.Part.METHOD, Setting.Part.TABLES);
    }

    @Override
    public Integer call() throws IOException {
        Settings settings = WithSettings.settings(spec);
        Map<String, String> all = new LinkedHashMap<>(words);
        put(all, "alloy", alloy);
        put(all, "nominal", nominal);
        put(all, "unit", unit);
        requireWhatToCompareWith(all);
        Optional<byte[]> described = sample == null ? Optional.empty()
            : Optional.of(Files.readAllBytes(InputFile.readable(sample)));
        FileQuestion question = FileQuestion.read(InputFile.readable(file), all, described,
            ServiceSettings.intake(settings));
        AnswerFigure wanted = FigureWord.of(spec, figure, format);
        SpotSource spots = SpotSource.of(question.spots());
        Segregation answer = new UnrecordedAnswers(AlloyCatalogue.packaged(), new Interpreter(), Opened.detectionLimit(settings))
            .interpret(question.sample(), spots, GroupWord.of(spec, by)).with(question.leftOut());
        String name = file.getFileName().toString();
        print(new AnswerFile(answer, spots, Instant.now().truncatedTo(ChronoUnit.MILLIS), Optional.of(name)), name, format,
            wanted, spec.commandLine().getOut());
        return Main.DONE;
    }

    /** A table does not say what it is to be compared with; a document may. */
    private void requireWhatToCompareWith(Map<String, String> all) {
        boolean document = file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".json");
        if (!document && sample == null && !all.containsKey("alloy") && !all.containsKey("nominal")) {
            throw new ParameterException(spec.commandLine(), "Say what the spots are compared with: --alloy ag-cu-eutectic (the "
                + "command alloys lists the names), --nominal Ag:60.1,Cu:39.9 --unit at%, or --sample with a file.");
        }
        if (all.containsKey("nominal") && !all.containsKey("unit")) {
            throw new ParameterException(spec.commandLine(), "--nominal needs --unit at% or --unit wt%.");
        }
    }

    static void print(AnswerFile file, String title, Format format, AnswerFigure figure, PrintWriter out) throws IOException {
        switch (format) {
            case json -> {
                out.flush();
                file.json(System.out);
                System.out.println();
                System.out.flush();
            }
            case csv -> out.print(file.csv());
            case md -> out.print(file.markdown());
            case html -> file(file.html(), out);
            case svg -> file(file.figure(figure).svg(), out);
            default -> TerminalReport.write(file.answer().interpretation(), title, Signs.forCharset(Charset.defaultCharset()),
                out);
        }
        out.flush();
    }

    /** A file that says of itself that it is UTF-8, whatever the terminal shows. */
    private static void file(String text, PrintWriter out) throws IOException {
        out.flush();
        System.out.write(text.getBytes(StandardCharsets.UTF_8));
        System.out.flush();
    }

    private static void put(Map<String, String> words, String name, String text) {
        if (text != null) {
            words.put(name, text);
        }
    }
}
