package surfeit.cli;

import java.io.PrintWriter;
import java.time.Clock;
import java.time.Instant;
import java.util.concurrent.CountDownLatch;
import surfeit.http.Server;
import surfeit.lab.Access;

/** The service on its record. */
final class Service {
    /** How long a write still under way gets to end; else it is taken back at the next start. Judgement. */
    private static final long CLOSE_MS = 1500;

    private Service() {
    }

    /** Runs it until it is told to stop. */
    static int run(Settings settings, PrintWriter out, PrintWriter err) throws InterruptedException {
        CountDownLatch stopped = new CountDownLatch(1);
        Opened opened = Opened.on(settings);
        warn(settings, opened.laboratory().access(), err);
        Server server = start(settings, opened);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            server.stop();
            close(opened);
            stopped.countDown();
        }, "stop"));
        out.println("listening on " + server.address());
        out.flush();
        stopped.await();
        return Main.DONE;
    }

    private static void close(Opened opened) {
        Thread closing = new Thread(opened::close, "close");
        closing.setDaemon(true);
        closing.start();
        try {
            closing.join(CLOSE_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void warn(Settings settings, Access access, PrintWriter err) {
        if (ServiceSettings.noAuth(settings)) {
            err.println("warning: --no-auth: everyone who can reach "
                + settings.get(Setting.HOST) + " may read and change everything, without a token.");
        } else if (!access.isOpen() && !access.hasValidToken(Instant.now())) {
            err.println("warning: every token is expired or revoked, so nobody gets in; make one with token new.");
        }
    }

    /** Starts the service; the lab is closed again where it cannot listen. */
    static Server start(Settings settings, Opened opened) {
        try {
            return Server.start(ServiceSettings.server(settings), opened.laboratory(), Clock.systemUTC());
        } catch (RuntimeException e) {
            opened.close();
            throw e;
        }
    }
}
