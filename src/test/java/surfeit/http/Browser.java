package surfeit.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.opentest4j.TestAbortedException;

/**
 * A headless Chromium, driven by the WebDriver protocol (W3C Recommendation) and, where that has no word for it, by the
 * browser's own debugging protocol. It can reach this machine only. Where there is none, the test is skipped aloud.
 */
final class Browser implements AutoCloseable {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final List<String> PLACES = List.of("/usr/bin", "/usr/local/bin", "/usr/lib/chromium");
    private static final Pattern PORT = Pattern.compile("on port (\\d+)");
    private static final Path PICTURES = Path.of("target", "board");
    private static final String ENTER = "\ue007";
    static final String TAB = "\ue004";

    private final HttpClient client = HttpClient.newHttpClient();
    private final Process driver;
    private final Path folder;
    private final String session;

    private Browser(Process driver, int port, Path folder, String language) {
        this.driver = driver;
        this.folder = folder;
        this.session = "http://127.0.0.1:" + port + "/session";
        ObjectNode wanted = JSON.createObjectNode();
        ObjectNode always = wanted.putObject("capabilities").putObject("alwaysMatch");
        ObjectNode options = always.putObject("goog:chromeOptions");
        options.put("binary", found("chromium").orElseThrow());
        for (String flag : new String[] {"--headless", "--no-sandbox", "--disable-gpu", "--disable-quic",
            "--no-first-run",
            "--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars",
            "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost", "--window-size=1400,1000",
            "--user-data-dir=" + folder.resolve("profile"), "--accept-lang=" + language}) {
            options.withArray("args").add(flag);
        }
        always.putObject("timeouts").put("pageLoad", 20_000);
        always.putObject("goog:loggingPrefs").put("browser", "ALL").put("performance", "ALL");
        id = send("POST", "", wanted).path("sessionId").asText();
    }

    private final String id;

    /** Opens a browser; skips the test aloud where there is none. */
    static Browser open() {
        return open("en");
    }

    /** The same, whose reader knows a language. */
    static Browser open(String language) {
        Optional<String> program = found("chromedriver");
        if (program.isEmpty() || found("chromium").isEmpty()) {
            String message = "NOT TESTED: no chromium and chromedriver on this machine; the pages were not looked at.";
            System.out.println(message);
            throw new TestAbortedException(message);
        }
        try {
            Path folder = Files.createTempDirectory("surfeit-browser");
            Process driver = new ProcessBuilder(program.get(), "--port=0").redirectErrorStream(true).start();
            return new Browser(driver, port(driver), folder, language);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Optional<String> found(String program) {
        return PLACES.stream().map(place -> Path.of(place, program)).filter(Files::isExecutable).map(Path::toString)
            .findFirst();
    }

    private static int port(Process driver) throws IOException {
        BufferedReader said = new BufferedReader(new InputStreamReader(driver.getInputStream(),
            StandardCharsets.UTF_8));
        for (String line = said.readLine(); line != null; line = said.readLine()) {
            Matcher port = PORT.matcher(line);
            if (line.contains("started successfully") && port.find()) {
                return Integer.parseInt(port.group(1));
            }
        }
        throw new IOException("The driver of the browser ended before it was ready.");
    }

    /** Goes to an address and waits until it is loaded. */
    void go(String address) {
        command("POST", "/url", JSON.createObjectNode().put("url", address));
    }

    /** Goes back to the page before. A script that does it may be run twice, for its page is gone before it has answered. */
    void back() {
        command("POST", "/back", JSON.createObjectNode());
    }

    /** The value of a JavaScript expression, as JSON. */
    JsonNode value(String expression) {
        ObjectNode body = JSON.createObjectNode().put("script", "return " + expression);
        body.putArray("args");
        return command("POST", "/execute/sync", body);
    }

    /** Runs JavaScript that calls {@code done} when it has finished. */
    JsonNode eventually(String script) {
        ObjectNode body = JSON.createObjectNode().put("script", "const done = arguments[0]; " + script);
        body.putArray("args");
        return command("POST", "/execute/async", body);
    }

    /** Waits until an expression is true. */
    void waitFor(String expression) {
        long end = System.nanoTime() + 10_000_000_000L;
        while (!value("Boolean(" + expression + ")").asBoolean()) {
            if (System.nanoTime() > end) {
                throw new AssertionError("Not within ten seconds: " + expression + "\n" + text("body"));
            }
            try {
                Thread.sleep(20);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException(e);
            }
        }
    }

    /** The text of an element as it is shown. */
    String text(String selector) {
        return value("document.querySelector(" + JSON.valueToTree(selector) + ")?.innerText ?? \"\"").asText();
    }

    /** Clicks on an element that is shown. */
    void click(String selector) {
        command("POST", "/element/" + element(selector) + "/click", JSON.createObjectNode());
    }

    /** Types into an element; of a field for files, the path of one. */
    void type(String selector, String text) {
        command("POST", "/element/" + element(selector) + "/value", JSON.createObjectNode().put("text", text));
    }

    /** Presses a key where the focus is. */
    void press(String key) {
        ObjectNode body = JSON.createObjectNode();
        ObjectNode keys = body.putArray("actions").addObject().put("type", "key").put("id", "keyboard");
        keys.putArray("actions").add(JSON.createObjectNode().put("type", "keyDown").put("value", key))
            .add(JSON.createObjectNode().put("type", "keyUp").put("value", key));
        command("POST", "/actions", body);
    }

    void pressEnter() {
        press(ENTER);
    }

    private String element(String selector) {
        return command("POST", "/element", JSON.createObjectNode().put("using", "css selector").put("value", selector))
            .elements().next().asText();
    }

    /** What the debugging protocol does. */
    JsonNode debug(String method, Map<String, ?> parameters) {
        ObjectNode body = JSON.createObjectNode().put("cmd", method);
        body.set("params", JSON.valueToTree(parameters));
        return command("POST", "/goog/cdp/execute", body);
    }

    /** Readers who prefer a dark page, or a light one. */
    void prefer(String scheme) {
        debug("Emulation.setEmulatedMedia", Map.of("features",
            List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
    }

    void size(int width, int height) {
        debug("Emulation.setDeviceMetricsOverride", Map.of("width", width, "height", height, "deviceScaleFactor", 1,
            "mobile", false));
    }

    void scripts(boolean allowed) {
        debug("Emulation.setScriptExecutionDisabled", Map.of("value", !allowed));
    }

    /** Keeps a picture of what is shown under {@code target/board}. */
    void picture(String name) {
        try {
            Files.createDirectories(PICTURES);
            Files.write(PICTURES.resolve(name + ".png"), Base64.getDecoder().decode(
                debug("Page.captureScreenshot", Map.of("format", "png")).path("data").asText()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Warnings and errors of the console since the last call. */
    List<String> complaints() {
        List<String> complaints = new ArrayList<>();
        for (JsonNode entry : log("browser")) {
            if (!entry.path("level").asText().matches("INFO|DEBUG")) {
                complaints.add(entry.path("message").asText());
            }
        }
        return complaints;
    }

    /** Addresses asked for since the last call. */
    List<String> requests() {
        List<String> requests = new ArrayList<>();
        for (JsonNode entry : log("performance")) {
            JsonNode message = tree(entry.path("message").asText()).path("message");
            if (message.path("method").asText().equals("Network.requestWillBeSent")) {
                requests.add(message.path("params").path("request").path("url").asText());
            }
        }
        return requests;
    }

    private JsonNode log(String type) {
        return command("POST", "/se/log", JSON.createObjectNode().put("type", type));
    }

    private JsonNode command(String method, String path, JsonNode body) {
        return send(method, "/" + id + path, body);
    }

    private JsonNode send(String method, String path, JsonNode body) {
        try {
            HttpResponse<String> answer = client.send(HttpRequest.newBuilder(URI.create(session + path))
                .header("Content-Type", "application/json").method(method,
                    HttpRequest.BodyPublishers.ofString(body.toString())).build(),
                    HttpResponse.BodyHandlers.ofString());
            JsonNode value = tree(answer.body()).path("value");
            if (answer.statusCode() >= 400) {
                throw new AssertionError(path + ": " + value.path("error").asText() + ": "
                    + value.path("message").asText());
            }
            return value;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static JsonNode tree(String text) {
        try {
            return JSON.readTree(text);
        } catch (IOException e) {
            throw new UncheckedIOException(text, e);
        }
    }

    @Override
    public void close() {
        try {
            send("DELETE", "/" + id, JSON.createObjectNode());
        } finally {
            driver.destroy();
            try (Stream<Path> files = Files.walk(folder)) {
                files.sorted(Comparator.reverseOrder()).forEach(file -> file.toFile().delete());
            } catch (IOException e) {
                System.out.println("Left behind: " + folder);
            }
        }
    }
}
