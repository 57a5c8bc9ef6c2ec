package surfeit.http;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Consumer;
import surfeit.composition.Phase;
import surfeit.http.json.InterpretationDocument;
import surfeit.http.json.JsonFormat;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.Segregation;
import surfeit.lab.StoredSample;
import surfeit.report.CsvReport;
import surfeit.report.MarkdownReport;
import surfeit.report.Provenance;
import surfeit.report.ReportSection.Topic;
import surfeit.report.SampleFact;
import surfeit.report.Signs;
import surfeit.report.StatedLines;
import surfeit.report.figure.AnswerFigure;
import surfeit.report.figure.Figure;
import surfeit.report.figure.Illustrations;
import surfeit.report.html.HtmlReport;
import surfeit.segregation.blocks.SpotSource;
import surfeit.segregation.screening.SpotReading;
import surfeit.xray.ProfileCache;

/**
 * An answer as JSON, CSV, Markdown, HTML or a figure, the same bytes over HTTP and from the command line.
 *
 * @param spots    the spots it was made from
 * @param computed when
 * @param fileName of the file the spots came in, where they are not on record
 */
public record AnswerFile(Segregation answer, SpotSource spots, Instant computed, Optional<String> fileName) {
    /** Text of an ordinary report, in characters; it grows where needed. */
    private static final int TEXT_LENGTH = 16 << 10;
    /** Keeps the physics of alloys seen, bounded: results of pure calculations only. */
    private static final ProfileCache PROFILES = new ProfileCache();
    /** Tables of words that enter answers; the other ones explain them to those who read them. */
    private static final Set<String> VOCABULARY =
        Set.of("vocabulary/causes.csv", "vocabulary/cautions.csv", "vocabulary/materials.csv");
    /** SHA-256 of every packed table whose numbers or words enter answers; check cases for other tools do not. */
    static final Map<String, String> TABLES = tables();

    /** An answer about spots on record, or in no file. */
    public AnswerFile(Segregation answer, SpotSource spots, Instant computed) {
        this(answer, spots, computed, Optional.empty());
    }

    /** Writes the answer as JSON. */
    public void json(OutputStream out) throws IOException {
        try (JsonGenerator json = JsonFormat.generator(out)) {
            InterpretationDocument.write(json, answer, computed, ProgramVersion.VERSION);
        }
    }

    /** The answer as flat rows. */
    public String csv() throws IOException {
        StringBuilder text = new StringBuilder(TEXT_LENGTH);
        CsvReport.write(answer.interpretation(), provenance(Map.of()), text);
        return text.toString();
    }

    /** The answer as a report. */
    public String markdown() throws IOException {
        StringBuilder text = new StringBuilder(TEXT_LENGTH);
        MarkdownReport.write(answer.interpretation(), provenance(StatedLines.of(spots)), Signs.UNICODE, text);
        return text.toString();
    }

    /** The answer as a report with its figures, one file. */
    public String html() throws IOException {
        StringBuilder text = new StringBuilder(TEXT_LENGTH);
        HtmlReport.write(answer.interpretation(), provenance(StatedLines.of(spots)),
            illustrations(EnumSet.allOf(AnswerFigure.class), reading -> { }), text);
        return text.toString();
    }

    /**
     * Writes some sections of the report as part of a page.
     *
     * @param beside takes the reading of every spot where spots are drawn
     * @return the figures there are to draw, of those wanted
     */
    Set<AnswerFigure> sections(Set<Topic> topics, Set<AnswerFigure> wanted, Consumer<SpotReading> beside,
        Appendable out)
            throws IOException {
        Illustrations illustrations = illustrations(wanted, beside);
        HtmlReport.sections(answer.interpretation(), provenance(StatedLines.of(spots)), illustrations, topics, out);
        return wanted.isEmpty() ? Set.of() : illustrations.figures(answer.interpretation());
    }

    /** A figure of the answer. @throws ProblemException where there is nothing to draw */
    public Figure figure(AnswerFigure figure) {
        return drawn(figure).orElseThrow(() -> new ProblemException(Problem.VALUE_OUT_OF_RANGE,
            figure == AnswerFigure.DEPTHS
                ? "There are no depths to draw: the beam energy of no spot is known, or a density is not tabulated. "
                    + "State beam_energy_kev, or ask /v1/signal-depths with density_g_cm3."
                : "There is nothing to draw: fewer than two groups can be compared."));
    }

    /** A figure of the answer; empty where there is nothing to draw. */
    private Optional<Figure> drawn(AnswerFigure figure) {
        return illustrations(EnumSet.of(figure), reading -> { }).draw(figure, answer.interpretation(),
            provenance(Map.of()).title());
    }

    private Illustrations illustrations(Set<AnswerFigure> wanted, Consumer<SpotReading> beside) {
        List<Phase> phases = answer.alloy().map(alloy -> alloy.alloy().phases()).orElse(List.of());
        return Illustrations.of(wanted, answer.interpretation(), answer.sample(), phases, spots, PROFILES,
            beside);
    }

    private Provenance provenance(Map<String, String> lines) {
        Optional<StoredSample> stored = answer.stored();
        return new Provenance(ProgramVersion.VERSION, stored.map(StoredSample::name), fileName,
            stored.map(sample -> OptionalLong.of(sample.revision())).orElse(OptionalLong.empty()), computed.toString(),
            TABLES, lines, SampleFact.of(answer.sample()));
    }

    private static Map<String, String> tables() {
        Map<String, String> tables = new LinkedHashMap<>();
        PackedFiles.load().shared().forEach((path, sha256) -> {
            if (path.endsWith(".csv") && (path.startsWith("reference/") || VOCABULARY.contains(path))) {
                tables.put(path, sha256);
            }
        });
        return tables;
    }
}
