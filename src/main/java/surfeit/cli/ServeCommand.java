package surfeit.cli;

import java.time.Clock;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import surfeit.http.Server;
import surfeit.http.ServerSettings;

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

    /** Starts the service; the lab is closed again where it cannot listen. */
    static Server start(Settings settings, Opened opened) {
        try {
            return Server.start(serverSettings(settings), opened.laboratory(), Clock.systemUTC());
        } catch (RuntimeException e) {
            opened.close();
            throw e;
        }
    }

    private static ServerSettings serverSettings(Settings settings) {
        return new ServerSettings(settings.get(Setting.HOST), settings.whole(Setting.PORT),
            settings.whole(Setting.UPLOAD_BYTES_MAX), settings.whole(Setting.JSON_BYTES_MAX),
            settings.whole(Setting.UPLOAD_ROWS_MAX),
            Setting.seconds(settings.get(Setting.BODY_STALL_S)), Setting.seconds(settings.get(Setting.BODY_TOTAL_S)),
            ServerSettings.DEFAULT.stopPatience());
    }
}
