package surfeit.cli;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.EnumSet;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Asks a running service whether it is ready; for container health checks. */
@Command(name = "health", mixinStandardHelpOptions = true, description = "Ask a running service whether it is ready.")
final class HealthCommand implements Callable<Integer>, WithSettings {
    private static final Duration PATIENCE = Duration.ofSeconds(4);

    @Spec
    private CommandSpec spec;

    @Override
    public Set<Setting.Part> uses() {
        return EnumSet.of(Setting.Part.ADDRESS);
    }

    @Override
    public Integer call() throws InterruptedException {
        Settings settings = WithSettings.settings(spec);
        String host = settings.get(Setting.HOST);
        URI address = URI.create("http://" + (host.contains(":") ? "[" + host + "]" : host) + ":" + settings.get(Setting.PORT) + "/readyz");
        try {
            HttpResponse<Void> answer = HttpClient.newBuilder().connectTimeout(PATIENCE).build()
                .send(HttpRequest.newBuilder(address).timeout(PATIENCE).build(), HttpResponse.BodyHandlers.discarding());
            spec.commandLine().getOut().println(address + " answers " + answer.statusCode());
            return answer.statusCode() == 200 ? Main.DONE : Main.REFUSED;
        } catch (IOException e) {
            spec.commandLine().getErr().println(address + " does not answer: " + e);
            return Main.REFUSED;
        }
    }
}
