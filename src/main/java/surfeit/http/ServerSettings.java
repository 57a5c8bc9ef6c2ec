package surfeit.http;

import java.time.Duration;
import surfeit.intake.IntakeLimits;

/**
 * Where the service listens, how much it takes, and from whom.
 *
 * @param host         address to listen on, {@code 127.0.0.1}
 * @param port         port; 0 takes a free one
 * @param requests     limits of requests
 * @param intake       limits of uploads and the spots in them
 * @param access       who is let in
 * @param stopPatience how long running requests may go on when the service stops
 * @param eventsKept   how long events can be read again; results are kept for ever
 */
public record ServerSettings(String host, int port, RequestLimits requests, IntakeLimits intake, AccessRules access,
                             Duration stopPatience, Duration eventsKept) {

    /** Loopback, port 8420, the usual limits, events for a quarter of a year. Judgement. */
    public static final ServerSettings DEFAULT = new ServerSettings("127.0.0.1", 8420, RequestLimits.DEFAULT,
        IntakeLimits.DEFAULT,
        AccessRules.DEFAULT, Duration.ofSeconds(10), Duration.ofDays(90));

    public ServerSettings {
        if (port < 0 || port > 65_535) {
            throw new IllegalArgumentException("port lies between 0 and 65535, got " + port + ".");
        }
    }

    public ServerSettings withHost(String other) {
        return new ServerSettings(other, port, requests, intake, access, stopPatience, eventsKept);
    }

    public ServerSettings withPort(int other) {
        return new ServerSettings(host, other, requests, intake, access, stopPatience, eventsKept);
    }

    public ServerSettings withRequests(RequestLimits other) {
        return new ServerSettings(host, port, other, intake, access, stopPatience, eventsKept);
    }

    public ServerSettings withIntake(IntakeLimits other) {
        return new ServerSettings(host, port, requests, other, access, stopPatience, eventsKept);
    }

    public ServerSettings withAccess(AccessRules other) {
        return new ServerSettings(host, port, requests, intake, other, stopPatience, eventsKept);
    }
}
