package surfeit.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import surfeit.lab.BackupReport;
import surfeit.storage.SqliteRestore;

/** Checks a backup and makes a record from it, in an empty folder. */
@Command(name = "restore", mixinStandardHelpOptions = true,
    description = "Check a backup and make a record from it in an empty folder; nothing is ever overwritten.")
final class RestoreCommand implements Callable<Integer>, WithSettings {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "backup to restore")
    private Path file;

    @Override
    public Set<Setting.Part> uses() {
        return EnumSet.of(Setting.Part.RECORD);
    }

    @Override
    public Integer call() {
        Settings settings = WithSettings.settings(spec);
        PrintWriter out = spec.commandLine().getOut();
        BackupReport report = SqliteRestore.restore(file, RecordPlace.of(settings).requireFolder("restore", "restore into a folder, then move it with the command move."), Instant.now());
        out.println("Restored " + file + " into " + settings.get(Setting.DATA) + ", checked.");
        BackupCommand.print(report, out);
        return Main.DONE;
    }
}
