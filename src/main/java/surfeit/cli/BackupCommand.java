package surfeit.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Set;
import java.util.SortedMap;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import surfeit.lab.AuditCheck;
import surfeit.lab.BackupReport;

/** Copies the record into one file and checks the copy; the service may go on meanwhile. */
@Command(name = "backup", mixinStandardHelpOptions = true,
    description = "Copy the record into one file and check the copy; the service may go on meanwhile.")
final class BackupCommand implements Callable<Integer>, WithSettings {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "file to make; nothing may be there")
    private Path file;

    @Override
    public Set<Setting.Part> uses() {
        return EnumSet.of(Setting.Part.RECORD);
    }

    @Override
    public Integer call() {
        Settings settings = WithSettings.settings(spec);
        PrintWriter out = spec.commandLine().getOut();
        RecordPlace place = RecordPlace.of(settings);
        BackupReport report = place.backup(file, Instant.now());
        out.println("Backup of " + place + " in " + file + ", checked.");
        print(report, out);
        return Main.DONE;
    }

    /** Prints what a backup holds. */
    static void print(BackupReport report, PrintWriter out) {
        out.println("made    " + report.made());
        out.println("bytes   " + report.byteCount());
        out.println("sha256  " + report.sha256());
        print(report.rowCounts(), report.audit(), out);
    }

    /** Prints how much a copy of a record holds, and how its audit ends. */
    static void print(SortedMap<String, Long> rowCounts, AuditCheck audit, PrintWriter out) {
        out.println("rows    " + rowCounts.entrySet().stream().filter(table -> table.getValue() > 0)
            .map(table -> table.getKey() + " " + table.getValue()).collect(Collectors.joining(", ")));
        out.println("audit   " + AuditWords.head(audit.head()));
        audit.broken().ifPresent(broken -> out.println("warning: the audit was broken already at row "
            + broken.number() + ": " + broken.what() + "."));
    }
}
