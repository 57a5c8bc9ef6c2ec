package surfeit.faults;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;

/** A POST over a bare connection whose body comes in two halves, as slowly as wanted. */
final class SlowRequest implements AutoCloseable {
    private final Socket socket;
    private final byte[] body;
    private final OutputStream out;

    private final String head;

    SlowRequest(URI address, String path, String mediaType, String text) throws IOException {
        socket = new Socket(address.getHost(), address.getPort());
        socket.setSoTimeout(30_000);
        out = socket.getOutputStream();
        body = text.getBytes(StandardCharsets.UTF_8);
        head = "POST " + path + " HTTP/1.1\r\nHost: " + address.getAuthority() + "\r\nContent-Type: " + mediaType
            + "\r\nContent-Length: " + body.length + "\r\nConnection: close\r\n\r\n";
    }

    /** Sends the head and the first half of the body. */
    SlowRequest begin() throws IOException {
        out.write(head.getBytes(StandardCharsets.US_ASCII));
        out.write(body, 0, body.length / 2);
        out.flush();
        return this;
    }

    void sendRest() throws IOException {
        out.write(body, body.length / 2, body.length - body.length / 2);
        out.flush();
    }

    /** Everything the service answers, to the end of the connection. */
    String answer() throws IOException {
        InputStream in = socket.getInputStream();
        return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}
