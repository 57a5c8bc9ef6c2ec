package surfeit.http;

import java.time.Clock;
import java.util.EnumMap;
import java.util.Map;

/**
 * What every answer may need to know of the running service. Thread-safe.
 *
 * <p>The salt of ETags holds all that decides an answer's bytes beside the stored revisions and the address: the
 * program's version, the settings that enter answers, and the form.
 */
final class ServiceFacts {
    private final ServerSettings settings;
    private final Clock clock;
    private final ArrivingBodies bodies;
    private final String version;
    private final Map<Form, String> salts = new EnumMap<>(Form.class);

    ServiceFacts(ServerSettings settings, Clock clock, String version, String answerSettings) {
        this.settings = settings;
        this.clock = clock;
        this.bodies = new ArrivingBodies(settings.requests().arrivingBodiesMax());
        this.version = version;
        for (Form form : Form.values()) {
            salts.put(form, Fingerprint.shortName(version + "\n" + answerSettings + "\n" + form));
        }
    }

    ServerSettings settings() {
        return settings;
    }

    Clock clock() {
        return clock;
    }

    /** Places for bodies on their way. */
    ArrivingBodies bodies() {
        return bodies;
    }

    String version() {
        return version;
    }

    String salt(Form form) {
        return salts.get(form);
    }
}
