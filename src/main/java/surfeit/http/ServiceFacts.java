package surfeit.http;

import java.time.Clock;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * What every answer may need to know of the running service. Thread-safe.
 *
 * <p>The salt of ETags holds all that decides an answer's bytes beside the stored revisions and the address: the
 * program's version, the settings that enter answers, and the form.
 */
final class ServiceFacts {
    private final ServerSettings settings;
    private final Clock clock;
    private final Places bodies;
    private final Places answers;
    private final String version;
    private final Supplier<String> answerSettings;
    private final Map<Form, String> salts = new ConcurrentHashMap<>();

    /** @param answerSettings the settings that enter answers, the same each time it is asked */
    ServiceFacts(ServerSettings settings, Clock clock, String version, Supplier<String> answerSettings) {
        this.settings = settings;
        this.clock = clock;
        RequestLimits limits = settings.requests();
        this.bodies = new Places(limits.arrivingBodiesMax(), "bodies", RequestLimits.ARRIVING_SETTING);
        this.answers = new Places(limits.largeAnswersMax(), "large answers", RequestLimits.LARGE_SETTING);
        this.version = version;
        this.answerSettings = answerSettings;
    }

    ServerSettings settings() {
        return settings;
    }

    Clock clock() {
        return clock;
    }

    /** Places for bodies on their way. */
    Places bodies() {
        return bodies;
    }

    /** Places for large answers on their way. */
    Places answers() {
        return answers;
    }

    String version() {
        return version;
    }

    String salt(Form form) {
        return salts.computeIfAbsent(form, unknown ->
            Fingerprint.shortName(version + "\n" + answerSettings.get() + "\n" + form));
    }
}
