package surfeit.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import surfeit.storage.MoveReport;

/** Moves the whole record from the data folder to the database or back, counted and checked. */
@Command(name = "move", mixinStandardHelpOptions = true,
    description = "Move the whole record from the data folder to the database or back, counted and checked; the place it "
        + "goes to must be empty, the one it comes from stays as it was, and no service may run on either.")
final class MoveCommand implements Callable<Integer>, WithSettings {
    /** Where to. */
    enum Target { database, folder }

    @Spec
    private CommandSpec spec;

    @Option(names = "--to", required = true, paramLabel = "<database|folder>", description = "where the record goes")
    private Target target;

    @Override
    public Set<Setting.Part> uses() {
        return EnumSet.of(Setting.Part.RECORD);
    }

    @Override
    public Integer call() {
        Settings settings = WithSettings.settings(spec);
        PrintWriter out = spec.commandLine().getOut();
        RecordPlace place = RecordPlace.of(settings);
        Path folder = Path.of(settings.get(Setting.DATA));
        boolean toDatabase = target == Target.database;
        MoveReport report = place.move(toDatabase, Instant.now());
        out.println("Moved the record of " + (toDatabase ? folder : place) + " to " + (toDatabase ? place : folder)
            + ": every row read again there, and compared.");
        BackupCommand.print(report.rowCounts(), report.audit(), out);
        out.println("What was in " + (toDatabase ? folder : place) + " is there still, unchanged. From now on start the "
            + "service " + (toDatabase ? "with database-url." : "without database-url."));
        return Main.DONE;
    }
}
