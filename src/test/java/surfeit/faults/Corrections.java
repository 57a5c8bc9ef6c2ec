package surfeit.faults;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/** Spots of one sample that are corrected over and over, and what each must be. */
final class Corrections {
    private static final int SPOTS = 50;

    private final String sample;
    private final Map<String, Integer> revisionById = new HashMap<>();
    private final Map<String, String> copperById = new HashMap<>();
    private RecordedSpots spots;
    private Optional<String> unansweredId = Optional.empty();
    private int sent;
    private int acknowledged;

    Corrections(String sample) {
        this.sample = sample;
    }

    int acknowledgedCount() {
        return acknowledged;
    }

    /** Records the spots once. */
    void prepare(RunningProgram program) throws IOException, InterruptedException {
        if (!revisionById.isEmpty()) {
            return;
        }
        program.put("/v1/samples/" + sample, "{\"alloy\": \"ag-cu-eutectic\"}");
        SentSpots first = SentSpots.table(sample, "c", SPOTS, new Random(1));
        program.post("/v1/samples/" + sample + "/spots", first.mediaType(), first.body());
        remember(program);
    }

    private void remember(RunningProgram program) throws IOException, InterruptedException {
        spots = RecordedSpots.of(program, sample);
        for (int i = 0; i < spots.count(); i++) {
            revisionById.put(spots.ids().get(i), spots.revisions().get(i));
            copperById.put(spots.ids().get(i), spots.copper().get(i));
        }
    }

    /** Corrects one spot after the other until there is no answer. */
    void send(RunningProgram program, Ledger ledger) {
        while (true) {
            String id = spots.ids().get(sent % SPOTS);
            String copper = 10 + sent / SPOTS % 80 + "." + sent % 10;
            sent++;
            try {
                HttpResponse<String> answer = program.post("/v1/spots/" + id + "/corrections", "application/json",
                    "{\"reason\": \"misread\", \"changes\": {\"elements\": {\"Cu\": \"" + copper + "\"}}}");
                if (answer.statusCode() != 200) {
                    ledger.unexpected(answer.statusCode() + " " + answer.body());
                    return;
                }
                acknowledged++;
                revisionById.merge(id, 1, Integer::sum);
                copperById.put(id, copper);
            } catch (IOException e) {
                unansweredId = Optional.of(id);
                return;
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    /** How many acknowledged corrections are not on record; the unanswered one may be or not. */
    int check(RunningProgram program) throws IOException, InterruptedException {
        RecordedSpots found = RecordedSpots.of(program, sample);
        int lost = Math.abs(SPOTS - found.count());
        for (int i = 0; i < found.count(); i++) {
            String id = found.ids().get(i);
            int beyond = found.revisions().get(i) - revisionById.get(id);
            boolean mayBeNew = unansweredId.filter(id::equals).isPresent();
            boolean asAcknowledged = beyond == 0 && found.copper().get(i).equals(copperById.get(id));
            if (!asAcknowledged && !(mayBeNew && beyond == 1)) {
                lost++;
            }
        }
        unansweredId = Optional.empty();
        remember(program);
        return lost;
    }
}
