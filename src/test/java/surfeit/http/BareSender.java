package surfeit.http;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** The least a server of events can do: one thread that writes the same bytes to every connection in turn. */
final class BareSender implements AutoCloseable {
    private final ServerSocket server;
    private final List<Socket> clients = new ArrayList<>();

    BareSender(int backlog) throws IOException {
        server = new ServerSocket(0, backlog, InetAddress.getLoopbackAddress());
    }

    int port() {
        return server.getLocalPort();
    }

    void accept(int count) throws IOException {
        for (int i = 0; i < count; i++) {
            clients.add(server.accept());
        }
        send("\nid: 0\n\n");
    }

    void send(long id) throws IOException {
        send("id: " + id + "\nevent: sample.changed\ndata: {\"id\":" + id + ",\"type\":\"sample.changed\","
            + "\"time\":\"2026-11-24T08:30:00Z\",\"sample\":\"E-" + id + "\"}\n\n");
    }

    private void send(String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
        for (Socket client : clients) {
            OutputStream out = client.getOutputStream();
            out.write(bytes);
        }
    }

    @Override
    public void close() throws IOException {
        for (Socket client : clients) {
            client.close();
        }
        server.close();
    }
}
