package surfeit.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import surfeit.http.Server;
import surfeit.report.Signs;
import surfeit.report.TerminalReport;
import surfeit.segregation.answer.GroupBy;

/** Shows the main job in a minute: a service on a free port with invented samples, one answer, three lines to try. */
@Command(name = "demo", mixinStandardHelpOptions = true,
    description = "Show the main job on invented samples: prints one answer, then serves until Ctrl-C; leaves nothing behind.")
final class DemoCommand implements Callable<Integer>, WithSettings {
    private static final String SHOWN = "ag-cu-braze-powder";

    @Spec
    private CommandSpec spec;

    @Option(names = "--once", description = "print and end; do not go on serving")
    private boolean once;

    @Override
    public Set<Setting.Part> uses() {
        return EnumSet.of(Setting.Part.ADDRESS, Setting.Part.METHOD, Setting.Part.TABLES, Setting.Part.SERVICE);
    }

    @Override
    public Map<Setting, String> standards() {
        return Map.of(Setting.PORT, "0");
    }

    @Override
    public Integer call() throws IOException, InterruptedException {
        Settings settings = WithSettings.settings(spec);
        Path folder = Files.createTempDirectory("surfeit-demo-");
        Opened opened = Opened.on(folder, settings);
        Server server = Service.start(settings, opened);
        CountDownLatch told = new CountDownLatch(1);
        Thread end = new Thread(() -> {
            server.stop();
            opened.close();
            DemoSamples.remove(folder);
            told.countDown();
        }, "stop");
        Runtime.getRuntime().addShutdownHook(end);
        new DemoSamples(server.address()).load();
        show(opened, server.address(), spec.commandLine().getOut());
        if (once) {
            Runtime.getRuntime().removeShutdownHook(end);
            end.start();
        }
        told.await();
        return Main.DONE;
    }

    private static void show(Opened opened, String address, PrintWriter out) throws IOException {
        out.println("Invented demonstration data of a powder lab; nothing here was measured.");
        out.println();
        TerminalReport.write(opened.laboratory().segregation(SHOWN, GroupBy.FEATURE).interpretation(), SHOWN,
            Signs.forCharset(Charset.defaultCharset()), out);
        out.println();
        out.println("listening on " + address);
        out.println("The samples in a browser: " + address + "/");
        out.println("Try, in another terminal:");
        for (String line : List.of(
            "curl " + address + "/v1/samples/sn-bi-solder-spheres/segregation.md",
            "curl -H 'Content-Type: application/json' --data-binary @sample-spectra-results/al-si-powder.json " + address
            + "/v1/interpretations.md",
            "curl -H 'Content-Type: text/csv' --data-binary @sample-spectra-results/ag-cu-braze-powder.csv '" + address
                + "/v1/interpretations.md?alloy=ag-cu-eutectic'")) {
            out.println("  " + line);
        }
        out.println("Documentation: " + address + "/docs   (Ctrl-C ends and leaves nothing behind)");
        out.flush();
    }
}
