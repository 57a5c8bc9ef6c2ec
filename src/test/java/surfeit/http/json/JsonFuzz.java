package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import surfeit.composition.Alloy;
import surfeit.fuzz.Spent;
import surfeit.intake.IntakeOptions;
import surfeit.intake.IntakeReport;
import surfeit.intake.ReadSpot;
import surfeit.intake.SpotIntake;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.StoredAlloy;
import surfeit.lab.Upload;
import surfeit.spot.Sample;

/**
 * A body of any bytes for each reader of JSON: it is read or refused as a client's fault, soon and in bounded memory;
 * what is taken stands in the body, and what is read can be written and read again.
 *
 * <p>The first line of an input names the reader; any other line stands for one of them.
 */
public final class JsonFuzz {
    private static final String QUOTED = "\"[^\"]*\"?|\\d+|U\\+[0-9A-F]+";

    private static final List<String> READERS = List.of("spots", "lines", "sample", "alloy", "interpretation", "plan",
        "signal-depths", "correction", "reason", "token");

    private JsonFuzz() {
    }

    /** Where the search is guided by what it reaches, it begins here. */
    public static void fuzzerTestOneInput(byte[] input) throws Exception {
        run(input);
    }

    static Set<String> run(byte[] input) throws Exception {
        int end = 0;
        while (end < input.length && input[end] != '\n') {
            end++;
        }
        String named = new String(input, 0, end, StandardCharsets.UTF_8);
        String kind = READERS.contains(named) ? named : READERS.get(Math.floorMod(named.hashCode(), READERS.size()));
        byte[] body = Arrays.copyOfRange(input, Math.min(end + 1, input.length), input.length);
        Spent spent = new Spent();
        Set<String> words;
        try {
            words = read(kind, body);
        } catch (MalformedJsonException e) {
            words = refused(e.refusal());
        } catch (ProblemException e) {
            words = refused(e);
        }
        spent.requireBounded(body.length);
        return words.stream().map(word -> kind + " " + word).collect(Collectors.toSet());
    }

    private static Set<String> refused(ProblemException refusal) {
        require(refusal.problem().status() < 500, "a refusal that is not the client's fault: " + refusal);
        TreeSet<String> words = new TreeSet<>();
        refusal.faults().forEach(fault -> words.add(fault.code() + kind(fault.detail())));
        return words;
    }

    /** A detail without what came. */
    private static String kind(String detail) {
        return " " + detail.replaceAll("(, got|, found|:|;) .*", "").replaceAll(QUOTED, "…");
    }

    private static Set<String> read(String kind, byte[] body) throws IOException {
        InputStream bytes = new ByteArrayInputStream(body);
        switch (kind) {
            case "spots" -> {
                return spots(body, false);
            }
            case "lines" -> {
                return spots(body, true);
            }
            case "sample" -> {
                return sample(SampleJson.read(bytes));
            }
            case "alloy" -> {
                return alloy(AlloyJson.read("fuzzed", bytes));
            }
            case "interpretation" -> {
                InterpretationRequest request = InterpretationRequest.read(upload(body), IntakeOptions.DEFAULT);
                request.spots().forEach(spot -> require(!spot.values().isEmpty(), "a spot of nothing"));
                return sample(request.sample());
            }
            case "plan" -> {
                return Set.of(PlanRequest.read(bytes).goal().getClass().getSimpleName());
            }
            case "signal-depths" -> {
                return Set.of(SignalDepthRequest.read(bytes).getClass().getSimpleName());
            }
            case "correction" -> {
                return Set.of(CorrectionJson.reason(bytes).isBlank() ? "no reason" : "a reason");
            }
            case "reason" -> {
                return Set.of(ReasonJson.read(bytes).isBlank() ? "no reason" : "a reason");
            }
            default -> {
                return Set.of(TokenJson.read(bytes).scopes().toString());
            }
        }
    }

    private static Set<String> spots(byte[] body, boolean lines) throws IOException {
        List<ReadSpot> spots = new ArrayList<>();
        SpotIntake intake = new SpotIntake(IntakeOptions.DEFAULT.limits(), spots::add);
        if (lines) {
            SpotLines.read(() -> new ByteArrayInputStream(body), IntakeOptions.DEFAULT, intake);
        } else {
            SpotDocument.read(() -> new ByteArrayInputStream(body), IntakeOptions.DEFAULT, intake);
        }
        IntakeReport report = intake.report();
        require(report.acceptedCount() == spots.size(), "the count of spots");
        require(report.faults().stream().allMatch(fault -> Problem.valueOf(fault.code().name()).status() < 500),
            "a fault that is not the sender's");
        if (!report.tableRefused()) {
            new JsonOracle(body, lines).check(spots, report);
        }
        TreeSet<String> words = new TreeSet<>();
        report.faults().forEach(fault -> words.add(fault.code() + kind(fault.detail())));
        spots.forEach(spot -> spot.spot().values().values()
            .forEach(value -> words.add(value.getClass().getSimpleName())));
        return words;
    }

    private static Set<String> sample(Sample sample) throws IOException {
        byte[] written = written(json -> {
            json.writeStartObject();
            SampleWriter.writeFields(json, sample);
            json.writeEndObject();
        });
        Sample again = SampleJson.read(new ByteArrayInputStream(written));
        require(again.equals(sample), "the sample that was read is " + sample + ", written and read again " + again);
        return Set.of("a sample of " + sample.alloy().map(id -> "an alloy").orElse("a nominal"));
    }

    private static Set<String> alloy(Alloy alloy) throws IOException {
        StoredAlloy stored = new StoredAlloy(alloy, 1, Optional.of(new surfeit.lab.Occasion("test", Instant.EPOCH)));
        Alloy again = AlloyJson.read("fuzzed", new ByteArrayInputStream(written(json ->
            AlloyDocuments.write(json, stored))));
        require(again.equals(alloy), "the alloy that was read is " + alloy + ", written and read again " + again);
        return Set.of("an alloy of " + alloy.phases().size() + " phases");
    }

    /** Writes one document. */
    private interface Writing {
        void write(JsonGenerator json) throws IOException;
    }

    private static byte[] written(Writing writing) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator json = JsonFormat.generator(bytes)) {
            writing.write(json);
        } catch (JsonProcessingException e) {
            throw new AssertionError("What was read cannot be written: " + e, e);
        }
        return bytes.toByteArray();
    }

    private static Upload upload(byte[] body) {
        return new Upload() {
            @Override
            public InputStream open() {
                return new ByteArrayInputStream(body);
            }

            @Override
            public String mediaType() {
                return "application/json";
            }

            @Override
            public Optional<String> fileName() {
                return Optional.empty();
            }
        };
    }

    static void require(boolean holds, String what) {
        if (!holds) {
            throw new AssertionError(what);
        }
    }
}
