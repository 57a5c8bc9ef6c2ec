package surfeit.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import surfeit.http.ProgramVersion;
import surfeit.http.UnsafeStartException;
import surfeit.lab.ProblemException;
import surfeit.storage.StorageException;

/**
 * The program's front door.
 *
 * <p>Exit codes: 0 done, 1 refused (bad input, or a data folder that cannot be used), 2 wrong usage or settings,
 * 3 internal fault.
 */
@Command(name = "surfeit", versionProvider = Main.Version.class, mixinStandardHelpOptions = true,
    description = "Says where the surface of an alloy is enriched or depleted, how sure that is, and what else could explain it.")
public final class Main implements Runnable {
    static final int DONE = 0;
    static final int REFUSED = 1;
    static final int WRONG_USAGE = 2;
    static final int INTERNAL = 3;

    @CommandLine.Spec
    private CommandSpec spec;

    public static void main(String[] arguments) {
        Optional<Map<String, String>> flags = arguments.length > 0 && arguments[0].equals(ServeCommand.NAME)
            ? PlainFlags.read(List.of(arguments).subList(1, arguments.length)) : Optional.empty();
        int code = flags.isPresent() ? serve(flags.get()) : commandLine(arguments).execute(arguments);
        if (code != DONE) {
            System.exit(code);
        }
    }

    private static int serve(Map<String, String> flags) {
        PrintWriter err = new PrintWriter(System.err, true);
        try {
            return Service.run(WithSettings.settings(key -> Optional.ofNullable(flags.get(key)), Map.of()),
                new PrintWriter(System.out, true), err);
        } catch (RuntimeException | InterruptedException e) {
            return told(e, err);
        }
    }

    /**
     * The command line, every setting a flag of the commands that use settings. Where the first word names a command, that
     * one only, for to know all of them takes a tenth of a second; {@code help} has to know them.
     */
    static CommandLine commandLine(String... arguments) {
        CommandLine line = new CommandLine(new Main());
        List<Class<?>> all = List.of(ServeCommand.class, DemoCommand.class, InterpretCommand.class, AlloysCommand.class,
            ImportCommand.class, ReportCommand.class, BackupCommand.class, RestoreCommand.class, MoveCommand.class,
            CheckAuditCommand.class, RecountCommand.class, TokenCommand.class, CheckConfigCommand.class, HealthCommand.class,
            VersionCommand.class, CommandLine.HelpCommand.class);
        List<Class<?>> named = all.stream().filter(command -> arguments.length > 0
            && command != CommandLine.HelpCommand.class
            && command.getAnnotation(Command.class).name().equals(arguments[0])).toList();
        (named.isEmpty() ? all : named).forEach(line::addSubcommand);
        SettingFlags.addBelow(line);
        line.setExecutionExceptionHandler((exception, command, result) -> told(exception, command.getErr()));
        line.setParameterExceptionHandler((exception, words) -> misused(exception));
        return line;
    }

    /** Says what is wrong and how the command is used; its whole help would push that off the screen. */
    private static int misused(CommandLine.ParameterException exception) {
        CommandLine command = exception.getCommandLine();
        PrintWriter err = command.getErr();
        err.println(exception.getMessage());
        CommandLine.UnmatchedArgumentException.printSuggestions(exception, err);
        CommandLine.Help help = command.getHelp();
        err.print(help.synopsisHeading() + help.synopsis(help.synopsisHeadingLength()));
        err.println("More: " + command.getCommandSpec().qualifiedName() + " --help");
        return WRONG_USAGE;
    }

    private static int told(Exception exception, PrintWriter err) {
        if (exception instanceof SettingsException || exception instanceof UnsafeStartException) {
            err.println("Cannot start: " + exception.getMessage());
            return WRONG_USAGE;
        }
        if (exception instanceof ProblemException problem) {
            Refusal.print(problem, err);
            return REFUSED;
        }
        if (exception instanceof StorageException || exception instanceof UnreadableFileException) {
            err.println(exception.getMessage());
            return REFUSED;
        }
        err.println("Internal fault: " + exception);
        exception.printStackTrace(err);
        return INTERNAL;
    }

    @Override
    public void run() {
        throw new CommandLine.ParameterException(spec.commandLine(), "Name a command: "
            + String.join(", ", spec.subcommands().keySet()) + ".");
    }

    /** The version for {@code --version}. */
    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"surfeit " + ProgramVersion.VERSION};
        }
    }
}
