package surfeit.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import surfeit.composition.AlloyCatalogue;
import surfeit.lab.Recount;
import surfeit.lab.Recounted;

/** Sums up the spots of samples anew and names the first sum kept of them that differs. */
@Command(name = "recount", mixinStandardHelpOptions = true,
    description = "Sum up the spots of samples anew and name the first kept sum that differs (exit code 1); the "
        + "service may go on meanwhile. Nothing is changed, unless --renew is given.")
final class RecountCommand implements Callable<Integer>, WithSettings {
    @Spec
    private CommandSpec spec;

    @Option(names = "--sample", paramLabel = "<name>", description = "only this sample")
    private Optional<String> sample = Optional.empty();

    @Option(names = "--renew",
        description = "then make all sums anew from the spots; the service must not run on the folder")
    private boolean renew;

    @Override
    public Set<Setting.Part> uses() {
        return EnumSet.of(Setting.Part.RECORD, Setting.Part.METHOD);
    }

    @Override
    public Integer call() {
        Settings settings = WithSettings.settings(spec);
        Recount recount = new Recount(AlloyCatalogue.packaged(), Opened.detectionLimit(settings));
        List<Recounted> all = RecordPlace.of(settings).read(access -> {
            List<Recounted> found = new ArrayList<>();
            sample.ifPresentOrElse(name -> recount.of(access, name, found::add),
                () -> recount.ofAll(access, found::add));
            return found;
        });
        boolean right = print(all);
        if (renew) {
            try (Opened opened = Opened.on(settings)) {
                recount.renew(opened.store(), sample);
            }
            spec.commandLine().getOut().println("All sums were made anew from the spots.");
        }
        return right ? Main.DONE : Main.REFUSED;
    }

    private boolean print(List<Recounted> all) {
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        all.forEach(one -> (one.isRight() ? out : err).println(
            "Sample " + one.sample() + " by " + one.by().word() + ": " + words(one)));
        long wrong = all.stream().filter(one -> !one.isRight()).count();
        if (wrong > 0) {
            err.println(wrong + " of " + all.size() + " kept sums are not right. With --renew they are made anew"
                + " from the spots; run check-audit first to see whether the spots are as they were recorded.");
        } else {
            out.println(all.isEmpty() ? "No sums are kept." : "Nothing differs.");
        }
        return wrong == 0;
    }

    private static String words(Recounted one) {
        return switch (one.state()) {
            case EQUAL -> one.spotCount() + " spots recounted, " + one.sumCount() + " sums compared, all equal.";
            case UNUSED -> "not used: made with another setting, description, alloy or version of the program."
                + " With --renew they are made anew.";
            case NOT_KEPT -> "no sums are kept: too many particles, or spots that cannot be compared.";
            case DIFFERENT -> one.difference().orElse("") + ".";
            case DAMAGED -> "damaged: the bytes are not those that were written. Answers come from the spots.";
        };
    }
}
