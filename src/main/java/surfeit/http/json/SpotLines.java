package surfeit.http.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import java.util.OptionalLong;
import surfeit.intake.FaultCode;
import surfeit.intake.IntakeOptions;
import surfeit.intake.Place;
import surfeit.intake.Refusal;
import surfeit.intake.SpotIntake;
import surfeit.intake.Upload;
import surfeit.spot.Spot;

/** Reads NDJSON, one spot a line, each with its own unit, into an intake. A line that is no JSON spoils only itself. */
public final class SpotLines {
    /** Longest line in bytes; a spot with everything stated takes some ten thousand. Judgement. */
    private static final int LINE_BYTES_MAX = 1 << 20;

    private SpotLines() {
    }

    /** Reads the body; blank lines count as lines and hold nothing. */
    public static void read(Upload upload, IntakeOptions options, SpotIntake intake) throws IOException {
        SpotReader reader = new SpotReader(options);
        try (InputStream raw = upload.open();
             InputStream bytes = ByteOrderMark.passed(new BufferedInputStream(raw, 1 << 16))) {
            int depthMax = DepthLimited.depthMax(raw);
            ByteArrayOutputStream line = new ByteArrayOutputStream();
            long number = 0;
            boolean more = true;
            while (more) {
                line.reset();
                number++;
                more = next(bytes, line);
                if (line.size() > LINE_BYTES_MAX) {
                    throw new Refusal(FaultCode.UPLOAD_TOO_LARGE, "Expected lines of at most " + LINE_BYTES_MAX
                        + " bytes, line " + number + " is longer.");
                }
                if (!isBlank(line.toByteArray())) {
                    read(line.toByteArray(), depthMax, number, reader, intake);
                }
            }
            requireSpots(intake);
        } catch (Refusal refusal) {
            intake.refuseTable(refusal.at(new Place.Row(1)));
        }
    }

    private static void requireSpots(SpotIntake intake) {
        if (intake.spotCount() == 0) {
            throw new Refusal(FaultCode.MALFORMED_JSON, "Expected at least one line with a spot, found none.");
        }
    }

    private static void read(byte[] line, int depthMax, long number, SpotReader reader, SpotIntake intake)
            throws IOException {
        intake.countRow();
        JsonFaults faults = new JsonFaults(OptionalLong.of(number));
        Optional<Spot> spot = Optional.empty();
        try (JsonParser parser = JsonFormat.parser(line, 0, line.length, depthMax)) {
            JsonInput in = new JsonInput(parser, faults);
            in.start();
            spot = reader.read(in, Optional.empty(), Optional.empty());
            in.end();
        } catch (JsonProcessingException e) {
            faults.add(JsonInput.refused(e));
            spot = Optional.empty();
        } catch (MalformedJsonException e) {
            faults.add(e);
            spot = Optional.empty();
        }
        SpotDocument.offer(spot, reader, faults, new Place.Pointer(OptionalLong.of(number), "", ""), intake);
    }

    /**
     * Reads up to the next line end; false at the end of the body. Keeps at most one byte more than a line may have.
     */
    private static boolean next(InputStream bytes, ByteArrayOutputStream line) throws IOException {
        for (int c = bytes.read(); c >= 0; c = bytes.read()) {
            if (c == '\n') {
                return true;
            }
            if (line.size() <= LINE_BYTES_MAX) {
                line.write(c);
            }
        }
        return false;
    }

    private static boolean isBlank(byte[] line) {
        for (byte b : line) {
            if (b != ' ' && b != '\t' && b != '\r') {
                return false;
            }
        }
        return true;
    }
}
