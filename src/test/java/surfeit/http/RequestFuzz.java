package surfeit.http;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.http.HttpHeaders;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import surfeit.fuzz.PlainTable;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.TokenScope;

/**
 * A request of any bytes, sent over a socket to the whole service: it is answered soon, never as a failure of the
 * service, in a shape the OpenAPI document knows, and with no cell a spreadsheet would run.
 *
 * <p>{@code CURSOR(key)} in an address becomes a cursor the service itself could have given for that list. The record
 * is begun anew from time to time, so that an input's cost stays its own.
 */
final class RequestFuzz implements AutoCloseable {
    private static final int PATIENCE_MS = 30_000;
    private static final int REQUESTS_A_RECORD = 1500;
    private static final Pattern CURSOR = Pattern.compile("CURSOR\\(([^)\\n]*)\\)");
    /** Fields that say where a body ends; where they lie, there may be nobody left to answer. */
    private static final Pattern FRAMING = Pattern.compile("(?i)transfer-encoding|content-length");
    private static final Pattern PLAIN_ADDRESS = Pattern.compile("[A-Z]+ (/[A-Za-z0-9_~-][A-Za-z0-9._~-]*)+(\\?.*)?");
    private static final Pattern ENDLESS = Pattern.compile("(?im)^content-type: text/event-stream");
    private static final Set<String> FROM_BELOW = Set.of("malformed-request", "headers-too-large", "address-too-long",
        "method-not-allowed", "not-found");

    private RunningService service = begun();
    private String token;
    private int count;

    private RunningService begun() {
        RunningService fresh = RunningService.start(
            ServerSettings.DEFAULT.withRequests(RequestLimits.DEFAULT.withRequestsPerSecond(1_000_000)));
        for (String sample : List.of("A7", "lot-7", "lot-7-etched")) {
            fresh.put("/v1/samples/" + sample, InventedPowder.SAMPLE);
            fresh.post("/v1/samples/" + sample + "/spots", InventedPowder.json());
        }
        token = fresh.token("fuzz", TokenScope.values());
        return fresh;
    }

    Set<String> run(byte[] input) throws Exception {
        if (++count % REQUESTS_A_RECORD == 0) {
            service.close();
            service = begun();
        }
        String text = new String(input, StandardCharsets.ISO_8859_1);
        int end = text.indexOf("\n\n");
        String head = end < 0 ? text : text.substring(0, end);
        byte[] body = end < 0 ? new byte[0] : Arrays.copyOfRange(input, end + 2, input.length);
        String first = withCursor(head.split("\n", 2)[0]).replaceAll("wait_s=[1-9][0-9]*", "wait_s=1");
        String fields = head.contains("\n") ? head.substring(head.indexOf('\n') + 1) + "\n" : "";
        byte[] answer = send(first, fields.replace("\n", "\r\n"), body);
        if (answer.length == 0 && FRAMING.matcher(fields).find()) {
            return Set.of("a body that ends before its end");
        }
        Reply reply = reply(answer, first);
        if (reply.status() == 401) {
            token = service.token("another " + count, TokenScope.values()); // an input revoked the one before
        }
        return check(first, reply);
    }

    private static String withCursor(String first) {
        Matcher cursor = CURSOR.matcher(first);
        if (!cursor.find()) {
            return first;
        }
        String address = first.replaceAll("^[^ ]* |\\?.*", "");
        Map<String, List<String>> query = new HashMap<>();
        for (String pair : first.replaceAll("^[^?]*\\??", "").split("&")) {
            query.put(pair.split("=", 2)[0], List.of(pair.contains("=") ? pair.split("=", 2)[1] : ""));
        }
        try {
            List<String> list = new Parameters(query, query.keySet()).list(address);
            return cursor.replaceFirst(Cursor.of(list, cursor.group(1)));
        } catch (ProblemException e) {
            return first; // an address that is refused has no list to go on in
        }
    }

    private byte[] send(String first, String fields, byte[] body) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", service.server().port())) {
            socket.setSoTimeout(PATIENCE_MS);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            out.writeBytes((first + " HTTP/1.1\r\n" + fields + "Host: localhost\r\nConnection: close\r\nAuthorization: "
                + "Bearer " + token + "\r\nContent-Length: " + body.length + "\r\n\r\n")
                .getBytes(StandardCharsets.ISO_8859_1));
            out.writeBytes(body);
            socket.getOutputStream().write(out.toByteArray());
            socket.shutdownOutput();
            return answer(socket.getInputStream());
        }
    }

    /** All of an answer, or the head of one that has no end: a stream of events goes on until somebody leaves. */
    private static byte[] answer(InputStream in) throws IOException {
        ByteArrayOutputStream answer = new ByteArrayOutputStream();
        byte[] piece = new byte[1 << 14];
        for (int read = in.read(piece); read >= 0; read = in.read(piece)) {
            answer.write(piece, 0, read);
            int end = answer.toString(StandardCharsets.ISO_8859_1).indexOf("\r\n\r\n");
            if (end >= 0 && ENDLESS.matcher(answer.toString(StandardCharsets.ISO_8859_1).substring(0, end)).find()) {
                return Arrays.copyOf(answer.toByteArray(), end + 4);
            }
        }
        return answer.toByteArray();
    }

    /** Takes an answer apart; an answer with the head alone has no body. */
    private static Reply reply(byte[] answer, String first) throws IOException {
        String text = new String(answer, StandardCharsets.ISO_8859_1);
        int end = text.indexOf("\r\n\r\n");
        if (!text.startsWith("HTTP/1.1 ") || end < 0) {
            throw new AssertionError("no answer to " + first + " but " + text);
        }
        Map<String, List<String>> headers = new HashMap<>();
        for (String line : text.substring(0, end).split("\r\n")) {
            int colon = line.indexOf(": ");
            if (colon > 0) {
                headers.computeIfAbsent(line.substring(0, colon), name -> new ArrayList<>())
                    .add(line.substring(colon + 2));
            }
        }
        byte[] body = Arrays.copyOfRange(answer, end + 4, answer.length);
        boolean endless = ENDLESS.matcher(text.substring(0, end)).find();
        boolean chunked = !endless && headers.getOrDefault("Transfer-Encoding", List.of()).contains("chunked");
        return new Reply(Integer.parseInt(text.substring(9, 12)), HttpHeaders.of(headers, (name, value) -> true),
            chunked ? joined(body) : body);
    }

    private static byte[] joined(byte[] chunks) throws IOException {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        InputStream in = new java.io.ByteArrayInputStream(chunks);
        while (true) {
            StringBuilder size = new StringBuilder();
            for (int c = in.read(); c != '\n'; c = in.read()) {
                if (c < 0) {
                    throw new AssertionError("the answer ends before its end");
                }
                size.append((char) c);
            }
            int length = Integer.parseInt(size.toString().strip(), 16);
            if (length == 0) {
                return all.toByteArray();
            }
            all.writeBytes(in.readNBytes(length));
            in.skipNBytes(2);
        }
    }

    private static Set<String> check(String first, Reply reply) {
        String told = first + " -> " + reply.status() + " " + reply.text().substring(0,
            Math.min(reply.text().length(), 200));
        require(reply.status() < 500, told);
        boolean head = first.startsWith("HEAD ");
        if (reply.status() >= 400 && !head) {
            require(reply.mediaType().equals("application/problem+json"), told);
            require(Problem.ofCode(reply.code()).isPresent(), told);
            require(reply.json().hasNonNull("request_id"), told);
        }
        if (PLAIN_ADDRESS.matcher(first).matches() && !(reply.status() >= 400 && FROM_BELOW.contains(reply.code()))) {
            AnswerCheck.check(first.split(" ")[0], first.split(" ")[1], reply);
        }
        if (reply.status() == 200 && reply.mediaType().equals("text/csv") && !first.contains("original")
            && !first.contains("/shared/")) {
            PlainTable.requireHarmlessTable(reply.text());
        }
        String kind = first.replaceAll("[^A-Z].*", "") + " " + reply.status() + " ";
        return Set.of(kind + (reply.status() < 400 || head ? reply.mediaType() : reply.code() + " " + reply.json()
            .path("detail").asText().replaceAll("\"[^\"]*\"?|[0-9]+", "…").replaceAll("(;|,|:| got) .*", "")));
    }

    private static void require(boolean holds, String what) {
        if (!holds) {
            throw new AssertionError(what);
        }
    }

    /** What is on record can be read in every form. */
    void readEverything() {
        String[] with = RunningService.bearer(token);
        service.get("/v1/samples?page_size=5000", with).json().path("items").findValuesAsText("sample").forEach(name -> {
            for (String form : List.of("segregation", "segregation.csv", "segregation.md", "spots", "spots.csv",
                "spots.ndjson", "revisions")) {
                Reply reply = service.get("/v1/samples/" + name + "/" + form, with);
                require(reply.status() < 500, name + " " + form + " " + reply.status() + " " + reply.text());
            }
        });
        require(service.get("/v1/results.csv", with).status() == 200, "results");
        require(service.get("/readyz").status() == 200, "not ready");
    }

    @Override
    public void close() {
        service.close();
    }
}
