package surfeit.http.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.core.util.JsonGeneratorDelegate;
import java.io.IOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Writes keys as bytes that were made once: an answer repeats the same few hundred keys for every element. Not
 * thread-safe; the keys are shared.
 */
final class KnownNames extends JsonGeneratorDelegate {
    /** Answers have about 400 keys; what comes beyond are names of elements and words of labs, written as they come. */
    private static final int MOST = 1024;
    private static final int LONGEST = 64;
    private static final Map<String, SerializedString> NAMES = new ConcurrentHashMap<>();

    KnownNames(JsonGenerator to) {
        super(to, false);
    }

    @Override
    public void writeFieldName(String name) throws IOException {
        SerializedString known = NAMES.get(name);
        if (known != null) {
            delegate.writeFieldName(known);
        } else if (NAMES.size() < MOST && name.length() <= LONGEST) {
            delegate.writeFieldName(NAMES.computeIfAbsent(name, SerializedString::new));
        } else {
            delegate.writeFieldName(name);
        }
    }
}
