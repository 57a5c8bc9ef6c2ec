package surfeit.http;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.util.JavalinException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Clock;
import java.time.Duration;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.ServerConnector;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import surfeit.lab.Access;
import surfeit.lab.Laboratory;

/** The running service. Thread-safe. */
public final class Server implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Server.class);
    /** Connections that may wait to be taken; the usual 50 turns away a thousand clients that come at once. */
    private static final int ACCEPT_QUEUE = 1024;
    /** How long streams get to take the word that the service stops. Judgement. */
    private static final Duration STREAM_END = Duration.ofSeconds(2);
    /** How long connections that are still open get to close, once all patience is over. Judgement. */
    private static final long BREAK_OFF_MS = 2000;
    /** How long a connection without a request is kept once the server stops; browsers keep theirs open. Judgement. */
    private static final long LAST_PAUSE_MS = 200;

    static {
        // a cache line of 64 bytes, 4 for each reference; to learn it, Jetty would load the whole of Java's management
        System.getProperties().putIfAbsent("org.eclipse.jetty.util.referencesPerCacheLine", "16");
    }

    private final Javalin javalin;
    private final ServerSettings settings;
    private final ServiceState state;

    private Server(Javalin javalin, ServerSettings settings, ServiceState state) {
        this.javalin = javalin;
        this.settings = settings;
        this.state = state;
    }

    /**
     * Starts to listen; returns when the service answers.
     *
     * @param clock tells when things are recorded and computed, and whether a token is valid still
     * @throws UnsafeStartException where other machines could reach it and nobody said so
     */
    public static Server start(ServerSettings settings, Laboratory laboratory, Clock clock) {
        ServiceState state = ServiceState.of(laboratory, clock, settings);
        return start(settings, Routes.of(laboratory, state), laboratory, clock, state);
    }

    static Server start(ServerSettings settings, RouteTable table, Laboratory laboratory, Clock clock,
                        ServiceState state) {
        Access access = laboratory.access();
        if (access.isOpen() && !settings.access().noAuth() && !isLoopback(settings.host())) {
            throw new UnsafeStartException(settings.host());
        }
        ServiceFacts facts = new ServiceFacts(settings, clock, ProgramVersion.VERSION, () -> settings.requests() + "\n"
            + settings.intake() + "\ndetection limit " + laboratory.detectionLimitMassFraction()
            + "\nwrites waiting " + laboratory.writesWaitingMax());
        Dispatcher dispatcher = new Dispatcher(table, facts, new Gate(access, settings, clock, state.tickets()),
            state);
        Javalin javalin = Javalin.create(config -> {
            configure(config, settings, state);
            dispatcher.register(config);
        });
        state.feed().start();
        try {
            javalin.start();
        } catch (RuntimeException e) {
            state.feed().close();
            throw e;
        }
        return new Server(javalin, settings, state);
    }

    /** True where only this machine can reach the address; a name that leads nowhere is none. */
    static boolean isLoopback(String host) {
        try {
            return InetAddress.getByName(host).isLoopbackAddress();
        } catch (UnknownHostException e) {
            return false;
        }
    }

    private static void configure(JavalinConfig config, ServerSettings settings, ServiceState state) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.startup.startupWatcherEnabled = false;
        config.http.compressionStrategy = io.javalin.compression.CompressionStrategy.NONE;
        config.http.maxRequestSize = Long.MAX_VALUE;
        config.jetty.addConnector((server, ignored) -> {
            HttpConfiguration http = new HttpConfiguration();
            http.setSendServerVersion(false);
            http.setRequestHeaderSize(settings.requests().headerBytesMax());
            // else a token in other letters of the same spelling would be taken for the one seen before on the connection
            http.setHeaderCacheCaseSensitive(true);
            http.addCustomizer(new SecurityHeaders());
            ServerConnector connector = new ServerConnector(server, new HttpConnectionFactory(http));
            connector.setHost(settings.host());
            connector.setPort(settings.port());
            connector.setAcceptQueueSize(ACCEPT_QUEUE);
            connector.setIdleTimeout(settings.requests().bodyStall().toMillis());
            connector.setShutdownIdleTimeout(LAST_PAUSE_MS);
            return connector;
        });
        config.jetty.modifyServer(server -> {
            server.setErrorHandler(new ProtocolErrors(settings.requests().headerBytesMax()));
            server.setRequestLog(state.measures().requests());
            server.setStopTimeout(BREAK_OFF_MS);
        });
    }

    /** The port it listens on. */
    public int port() {
        return javalin.port();
    }

    /** Where it answers: {@code http://127.0.0.1:8420}. */
    public String address() {
        String host = settings.host().contains(":") ? "[" + settings.host() + "]" : settings.host();
        return "http://" + host + ":" + port();
    }

    /**
     * Says no to readiness checks and to new requests, tells event streams, lets requests under way end, then stops
     * listening. Those that still run when patience is over are broken off.
     */
    public void stop() {
        long start = System.nanoTime();
        state.readiness().end();
        state.feed().close(STREAM_END);
        state.readiness().awaitDone(settings.stopPatience().minusNanos(System.nanoTime() - start));
        try {
            javalin.stop();
        } catch (JavalinException e) {
            LOG.info("Connections that did not close in time were broken off.");
        }
    }

    @Override
    public void close() {
        stop();
    }
}
