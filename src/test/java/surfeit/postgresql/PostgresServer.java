package surfeit.postgresql;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * A real PostgreSQL for tests, on a free port and in a folder of its own. It writes through to the disk as one in use
 * would, sorts texts as people do, asks for a password, and ends with the program that started it. Thread-safe.
 */
public final class PostgresServer implements AutoCloseable {
    public static final String USER = "lab";
    public static final String PASSWORD = "a password of the tests";
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    /** Waits for the end of its standard input, then has the server end; so it ends when the tests are killed, too. */
    private static final String UNTIL_TOLD = "\"$@\" & server=$!; cat > /dev/null; kill -INT $server; wait $server";

    private final Path folder;
    private final Path programs;
    private final OrdinaryUser user;
    private final int port;
    private Process guard;

    private PostgresServer() {
        try {
            programs = UnpackedPostgres.programs();
            user = OrdinaryUser.find();
            folder = Files.createTempDirectory("surfeit-postgresql-data-");
            try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
                port = free.getLocalPort();
            }
            initialize();
            start();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw stopped(e);
        }
    }

    /** The server that test classes share, each with databases of its own; it ends with the tests. */
    public static PostgresServer shared() {
        return Shared.SERVER;
    }

    private static final class Shared {
        static final PostgresServer SERVER = new PostgresServer();

        static {
            Runtime.getRuntime().addShutdownHook(new Thread(SERVER::close, "end of PostgreSQL"));
        }
    }

    /** A server of the caller's own, to be stopped and hurt at will. */
    public static PostgresServer own() {
        return new PostgresServer();
    }

    private void initialize() throws IOException, InterruptedException {
        Path password = folder.resolve("password");
        Files.writeString(password, PASSWORD);
        Path data = Files.createDirectory(folder.resolve("data"),
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
        if (user.ownsNothing()) {
            run(List.of("chown", "-R", "nobody", folder.toString()));
        }
        String initdb = programs.resolve("initdb").toString();
        List<String> command = new ArrayList<>(List.of(initdb, "-D", data.toString(), "-U", USER, "-E", "UTF8",
            "--locale=C.UTF-8", "-A", "scram-sha-256", "--pwfile", password.toString()));
        if (run(user.command(List.of(initdb, "--help"))).contains("--icu-locale")) {
            command.addAll(List.of("--locale-provider=icu", "--icu-locale=en-US"));
        }
        run(user.command(command));
        Files.delete(password);
    }

    private static String run(List<String> command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes());
        if (process.waitFor() != 0) {
            throw new IOException(String.join(" ", command) + " failed: " + said);
        }
        return said;
    }

    /** Starts the server again on what is in its folder. */
    public synchronized void start() {
        List<String> command = new ArrayList<>(List.of("sh", "-c", UNTIL_TOLD, "sh",
            programs.resolve("postgres").toString(), "-D", folder.resolve("data").toString(), "-p",
            String.valueOf(port), "-h", "127.0.0.1", "-k", ""));
        for (String setting : List.of("fsync=on", "synchronous_commit=on", "full_page_writes=on", "max_connections=100")) {
            command.addAll(List.of("-c", setting));
        }
        try {
            guard = new ProcessBuilder(user.command(command)).redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log().toFile())).start();
            awaitReady();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw stopped(e);
        }
    }

    private void awaitReady() throws IOException, InterruptedException {
        long deadline = System.nanoTime() + PATIENCE.toNanos();
        while (true) {
            try (Connection connection = connect("postgres")) {
                connection.isValid(1);
                return;
            } catch (SQLException e) {
                if (!guard.isAlive() || System.nanoTime() > deadline) {
                    throw new IOException("PostgreSQL does not start: " + Files.readString(log()), e);
                }
                Thread.sleep(20);
            }
        }
    }

    private Path log() {
        return folder.resolve("log");
    }

    /** Ends the server, breaking off every connection; what was committed stays. */
    public synchronized void stop() {
        try {
            guard.getOutputStream().close();
            if (!guard.waitFor(PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
                throw new IllegalStateException("PostgreSQL does not stop: " + Files.readString(log()));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw stopped(e);
        }
    }

    private static IllegalStateException stopped(InterruptedException e) {
        Thread.currentThread().interrupt();
        return new IllegalStateException(e);
    }

    /** The address of one of its databases. */
    public String url(String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
    }

    /** Makes an empty database. */
    public void createDatabase(String name) {
        execute("postgres", "CREATE DATABASE " + name);
    }

    /** Makes an empty database whose tables are kept in a folder, for instance on another disk. */
    public void createDatabase(String name, Path place) {
        try {
            Files.createDirectories(place);
            if (user.ownsNothing()) {
                run(List.of("chown", "nobody", place.toString()));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw stopped(e);
        }
        execute("postgres", "CREATE TABLESPACE " + name + "_place LOCATION '" + place + "'");
        execute("postgres", "CREATE DATABASE " + name + " TABLESPACE " + name + "_place");
    }

    public Connection connect(String database) throws SQLException {
        return DriverManager.getConnection(url(database), USER, PASSWORD);
    }

    /** Does something to one of its databases behind the program's back. */
    public void execute(String database, String sql) {
        try (Connection connection = connect(database); Statement statement = connection.createStatement()) {
            statement.execute(sql);
        } catch (SQLException e) {
            throw new IllegalStateException(sql, e);
        }
    }

    @Override
    public void close() {
        stop();
        try {
            UnpackedPostgres.remove(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
