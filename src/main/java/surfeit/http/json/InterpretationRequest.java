package surfeit.http.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.intake.IntakeOptions;
import surfeit.intake.IntakeReport;
import surfeit.intake.ReadSpot;
import surfeit.intake.SpotIntake;
import surfeit.lab.IntakeFaults;
import surfeit.lab.Problem;
import surfeit.lab.Upload;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/**
 * A sample and its spots in one body, to be interpreted and forgotten:
 * {@code {"sample": {...}, "unit": ..., "session": ..., "spots": [...]}}.
 *
 * <p>The usual order of keys is read in one go; where something that holds for the spots stands behind them, the body
 * is read again.
 */
public record InterpretationRequest(Sample sample, List<Spot> spots) {

    /** Reads the body. @throws surfeit.lab.ProblemException with every fault */
    public static InterpretationRequest read(Upload body, IntakeOptions options) throws IOException {
        Pass pass = new Pass(options, new SpotDocument.Head(), Optional.empty(), false);
        pass.read(body);
        if (pass.isTooEarly) {
            pass = new Pass(options, pass.head, pass.sample, true);
            pass.read(body);
        }
        return new InterpretationRequest(pass.sample.orElseThrow(), pass.spots);
    }

    /** One reading of the body. */
    private static final class Pass {
        private static final Keys<Pass> KEYS = new Keys<Pass>("a sample with its spots")
            .key("sample", (in, pass) -> {
                pass.noteForSpots();
                pass.sampleGiven = true;
                pass.sample = SampleJson.read(in);
            })
            .key("unit", (in, pass) -> {
                pass.noteForSpots();
                pass.head.unit = NominalJson.unit(in);
            })
            .key("session", (in, pass) -> {
                pass.noteForSpots();
                pass.head.session = in.text();
            })
            .key("spots", (in, pass) -> pass.readSpots(in));

        private final IntakeOptions options;
        private final SpotDocument.Head head;
        private final boolean again;
        private final List<Spot> spots = new ArrayList<>();
        private final SpotIntake intake;
        private Optional<Sample> sample;
        private boolean sampleGiven;
        private boolean isTooEarly;

        /** @param again true where head and sample are known from a first reading */
        Pass(IntakeOptions options, SpotDocument.Head head, Optional<Sample> sample, boolean again) {
            this.options = options;
            this.head = head;
            this.sample = sample;
            this.again = again;
            this.intake = new SpotIntake(options.limits(), (ReadSpot read) -> spots.add(read.spot()));
            head.spotsGiven = false;
        }

        void read(Upload body) throws IOException {
            JsonFaults faults = new JsonFaults();
            try (InputStream bytes = body.open(); JsonParser parser = JsonFormat.parser(bytes)) {
                JsonInput in = new JsonInput(parser, faults);
                in.start();
                if (in.object(KEYS, this)) {
                    requireAll(in);
                }
                in.end();
            } catch (JsonProcessingException e) {
                throw JsonInput.refused(e);
            }
            if (!isTooEarly) {
                IntakeReport report = intake.report();
                faults.addAll(report.faults().stream().map(IntakeFaults::fault).toList(), report.faultCount());
                faults.refuse();
            }
        }

        private void requireAll(JsonInput in) {
            if (!sampleGiven) {
                in.missing("", "sample", Problem.NOMINAL_INCOMPLETE,
                    "Expected \"sample\" with the \"alloy\" or the \"nominal\" to compare with.");
            }
            if (!head.spotsGiven) {
                in.missing("", "spots", Problem.MALFORMED_JSON, "Expected \"spots\", a list of spots.");
            }
        }

        /** What comes now holds for the spots; where they were read already, they were read too early. */
        private void noteForSpots() {
            isTooEarly |= head.spotsGiven && !again;
        }

        private void readSpots(JsonInput in) throws IOException {
            head.spotsGiven = true;
            if (!again && !sampleGiven) {
                isTooEarly = true;
                in.skip();
                return;
            }
            int level = sample.map(known -> known.judgement().uLevel()).orElse(1);
            SpotReader reader = new SpotReader(options.withULevel(level));
            in.array("a list of spots", () -> SpotDocument.take(in, reader, head, intake));
        }
    }
}
