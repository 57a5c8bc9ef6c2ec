package surfeit.cli;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import surfeit.lab.AuditChain;
import surfeit.lab.AuditCheck;
import surfeit.lab.AuditHead;

/** Goes through the audit and names the first row that is not as it was written; the service may go on meanwhile. */
@Command(name = "check-audit", mixinStandardHelpOptions = true,
    description = "Go through the audit and name the first row that is not as it was written (exit code 1); "
        + "the service may go on meanwhile.")
final class CheckAuditCommand implements Callable<Integer>, WithSettings {
    @Spec
    private CommandSpec spec;

    @Option(names = "--head", paramLabel = "<count:hash>",
        description = "an end of the audit that was noted elsewhere, as this command prints it: shows a cut tail")
    private Optional<String> head = Optional.empty();

    @Override
    public Set<Setting.Part> uses() {
        return EnumSet.of(Setting.Part.RECORD);
    }

    @Override
    public Integer call() {
        Settings settings = WithSettings.settings(spec);
        List<AuditHead> kept = head.map(this::read).stream().toList();
        AuditCheck check = RecordPlace.of(settings).read(access -> AuditChain.check(access, kept));
        if (check.broken().isPresent()) {
            spec.commandLine().getErr().println("The audit is broken at row " + check.broken().get().number() + ": "
                + check.broken().get().what() + ".");
            return Main.REFUSED;
        }
        spec.commandLine().getOut().println("The audit is intact: " + AuditWords.head(check.head()));
        return Main.DONE;
    }

    private AuditHead read(String text) {
        try {
            return AuditWords.read(text);
        } catch (IllegalArgumentException e) {
            throw new CommandLine.ParameterException(spec.commandLine(), "--head: " + e.getMessage(), e);
        }
    }
}
