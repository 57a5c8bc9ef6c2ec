package surfeit.http.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import surfeit.composition.Basis;
import surfeit.intake.Fault;
import surfeit.intake.FaultCode;
import surfeit.intake.IntakeOptions;
import surfeit.intake.LeftOut;
import surfeit.intake.Place;
import surfeit.intake.ReadSpot;
import surfeit.intake.Refusal;
import surfeit.intake.SpotIntake;
import surfeit.intake.Upload;
import surfeit.lab.Problem;
import surfeit.spot.Spot;

/**
 * Reads a JSON body of spots, {@code {"unit": ..., "session": ..., "spots": [...]}}, into an intake.
 *
 * <p>{@code unit} and {@code session} hold for all spots wherever they stand, so the body is looked through for them
 * before its spots are read.
 */
public final class SpotDocument {
    private SpotDocument() {
    }

    /** Takes the spots of the body one by one. */
    interface Taker {
        void take(JsonInput in) throws IOException;
    }

    /** What the body says of all its spots. */
    static final class Head {
        Optional<Basis> unit = Optional.empty();
        Optional<String> session = Optional.empty();
        boolean spotsGiven;
        /** Takes the spots; passes over them unless told otherwise. */
        Taker taker = JsonInput::skip;

        static final Keys<Head> KEYS = keys("an upload of spots");

        static Keys<Head> keys(String shape) {
            return new Keys<Head>(shape)
                .key("unit", (in, head) -> head.unit = NominalJson.unit(in))
                .key("session", (in, head) -> head.session = in.text())
                .key("spots", (in, head) -> {
                    head.spotsGiven = true;
                    in.array("a list of spots", () -> head.taker.take(in));
                });
        }
    }

    /** Reads the body. @throws surfeit.lab.ProblemException where it is no such document as a whole */
    public static void read(Upload upload, IntakeOptions options, SpotIntake intake) throws IOException {
        Head head = head(upload);
        SpotReader reader = new SpotReader(options);
        try (InputStream bytes = upload.open(); JsonParser parser = JsonFormat.parser(bytes)) {
            JsonInput in = new JsonInput(parser, new JsonFaults());
            in.start();
            Head again = new Head();
            again.taker = spot -> take(spot, reader, head, intake);
            in.object(Head.KEYS, again);
        } catch (JsonProcessingException e) {
            throw JsonInput.refused(e);
        }
    }

    private static Head head(Upload upload) throws IOException {
        try (InputStream bytes = upload.open()) {
            return JsonDocument.read(bytes, in -> {
                Head head = new Head();
                if (in.object(Head.KEYS, head) && !head.spotsGiven) {
                    in.missing("", "spots", Problem.MALFORMED_JSON, "Expected \"spots\", a list of spots.");
                }
                return Optional.of(head);
            });
        }
    }

    /** Reads one spot with faults of its own, and hands it or them on. */
    static void take(JsonInput in, SpotReader reader, Head head, SpotIntake intake) throws IOException {
        String pointer = in.pointer();
        try {
            intake.countRow();
        } catch (Refusal refusal) {
            intake.refuseTable(refusal.at(new Place.Pointer(OptionalLong.empty(), pointer, "")));
            in.skip();
            return;
        }
        JsonFaults faults = new JsonFaults();
        Optional<Spot> spot = reader.read(in.withFaults(faults), head.unit, head.session);
        offer(spot, reader, faults, new Place.Pointer(OptionalLong.empty(), pointer, ""), intake);
    }

    static void offer(Optional<Spot> spot, SpotReader reader, JsonFaults faults, Place.Pointer place, SpotIntake intake) {
        if (spot.isPresent()) {
            intake.offer(new ReadSpot(spot.get(), place, List.of()));
            reader.takeNotKept().forEach(part -> intake.leaveOut(new LeftOut.Spot(
                new Place.Pointer(place.line(), part.pointer(), ""), part.words() + " beside a value that is no number",
                spot.get().label())));
            return;
        }
        intake.reject(List.of(), faults.shown().stream().map(fault -> told(fault, place.line())).toList());
    }

    private static Fault told(surfeit.lab.Fault fault, OptionalLong line) {
        return new Fault(FaultCode.valueOf(fault.code().name()), fault.detail(),
            new Place.Pointer(line, fault.place().pointer().orElse(""), fault.value().orElse("")), fault.setting());
    }
}
