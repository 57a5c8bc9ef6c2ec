package surfeit.http;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** A request written byte by byte to a socket, for what well-behaved clients cannot send. */
final class RawRequest implements AutoCloseable {
    private static final int PATIENCE_MS = 20_000;

    private final Socket socket;
    private final OutputStream out;
    private final long start = System.nanoTime();

    RawRequest(RunningService service) throws IOException {
        socket = new Socket("127.0.0.1", service.server().port());
        socket.setSoTimeout(PATIENCE_MS);
        socket.setTcpNoDelay(true);
        out = socket.getOutputStream();
    }

    RawRequest send(String text) throws IOException {
        return send(text.getBytes(StandardCharsets.ISO_8859_1));
    }

    RawRequest send(byte[] bytes) throws IOException {
        out.write(bytes);
        out.flush();
        return this;
    }

    /** The head of a request with a body of this length. */
    RawRequest head(String method, String path, String mediaType, long length, String... more) throws IOException {
        StringBuilder head = new StringBuilder(method + " " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: "
            + mediaType
            + "\r\nContent-Length: " + length + "\r\n");
        for (String line : more) {
            head.append(line).append("\r\n");
        }
        return send(head + "\r\n");
    }

    /** Sends one byte after another with a pause between, until the service hangs up or nothing is left. */
    RawRequest drip(byte[] bytes, long pauseMillis) throws InterruptedException {
        try {
            for (byte b : bytes) {
                if (socket.getInputStream().available() > 0) {
                    return this;
                }
                send(new byte[] {b});
                Thread.sleep(pauseMillis);
            }
        } catch (IOException e) {
            return this;
        }
        return this;
    }

    Duration elapsed() {
        return Duration.ofNanos(System.nanoTime() - start);
    }

    /** An answer as it came. */
    record Answer(int status, Map<String, String> headers, String body) {
    }

    /** The answer, read until the service closes the connection or its length is reached. */
    Answer answer() throws IOException {
        Answer head = head();
        int length = Integer.parseInt(head.headers().getOrDefault("content-length", "0"));
        return new Answer(head.status(), head.headers(),
            new String(socket.getInputStream().readNBytes(length), StandardCharsets.UTF_8));
    }

    /** The head of the answer alone; its body is left where it is. */
    Answer head() throws IOException {
        InputStream in = socket.getInputStream();
        ByteArrayOutputStream head = new ByteArrayOutputStream();
        while (!head.toString(StandardCharsets.ISO_8859_1).endsWith("\r\n\r\n")) {
            int c = in.read();
            if (c < 0) {
                throw new IOException("The service closed the connection after: " + head);
            }
            head.write(c);
        }
        String[] lines = head.toString(StandardCharsets.ISO_8859_1).split("\r\n");
        Map<String, String> headers = new TreeMap<>();
        for (int i = 1; i < lines.length; i++) {
            int colon = lines[i].indexOf(':');
            headers.put(lines[i].substring(0, colon).toLowerCase(Locale.ROOT), lines[i].substring(colon + 1).strip());
        }
        return new Answer(Integer.parseInt(lines[0].split(" ")[1]), headers, "");
    }

    /** True where an answer has begun to arrive. */
    boolean isAnswered() throws IOException {
        return socket.getInputStream().available() > 0;
    }

    /** True where the service has closed the connection. */
    boolean isClosed() throws IOException {
        return socket.getInputStream().read() < 0;
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}
