package surfeit.cli;

import java.time.Clock;
import java.time.Instant;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import surfeit.http.Server;
import surfeit.lab.Access;

/** Runs the service until it is told to stop. */
@Command(name = "serve", mixinStandardHelpOptions = true, description = "Run the service until it is told to stop.")
final class ServeCommand implements Callable<Integer>, WithSettings {
    /** How long a write still under way gets to end; else it is taken back at the next start. Judgement. */
    private static final long CLOSE_MS = 1500;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws InterruptedException {
        Settings settings = WithSettings.settings(spec);
        CountDownLatch stopped = new CountDownLatch(1);
        Opened opened = Opened.on(settings);
        warn(settings, opened.laboratory().access());
        Server server = start(settings, opened);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> {
            server.stop();
            close(opened);
            stopped.countDown();
        }, "stop"));
        spec.commandLine().getOut().println("listening on " + server.address());
        spec.commandLine().getOut().flush();
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

    private void warn(Settings settings, Access access) {
        if (ServiceSettings.noAuth(settings)) {
            spec.commandLine().getErr().println("warning: --no-auth: everyone who can reach "
                + settings.get(Setting.HOST) + " may read and change everything, without a token.");
        } else if (!access.isOpen() && !access.hasValidToken(Instant.now())) {
            spec.commandLine().getErr().println(
                "warning: every token is expired or revoked, so nobody gets in; make one with token new.");
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
