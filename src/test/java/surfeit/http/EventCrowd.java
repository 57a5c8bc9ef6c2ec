package surfeit.http;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.LongConsumer;

/**
 * Many clients of an event stream at once, over bare connections read by one thread: notes for each whether every
 * number came once and in order, and tells when each came.
 */
final class EventCrowd implements AutoCloseable {
    private static final byte[] ID = "\nid: ".getBytes(StandardCharsets.US_ASCII);

    private final Selector selector = Selector.open();
    private final List<Client> clients = new ArrayList<>();
    private final ByteBuffer buffer = ByteBuffer.allocateDirect(64 << 10);
    private final long lastId;
    private final LongConsumer arrived;
    private final CountDownLatch open;
    private final CountDownLatch complete;
    private final Thread thread = new Thread(this::run, "crowd");
    private volatile boolean closed;

    /** What one client saw, read byte by byte: the number after each {@code id:} at the beginning of a line. */
    private final class Client {
        private int matched;
        private long number = -1;
        private boolean started;
        private long seen;
        private long lost;
        private long doubled;

        private void take(byte b) {
            if (number >= 0 && b >= '0' && b <= '9') {
                number = number * 10 + b - '0';
            } else if (number >= 0) {
                saw(number);
                number = -1;
            }
            matched = b == ID[matched] ? matched + 1 : b == ID[0] ? 1 : 0;
            if (matched == ID.length) {
                matched = 0;
                number = 0;
            }
        }

        private void saw(long id) {
            if (!started) {
                started = true;
                seen = id;
                open.countDown();
            } else if (id <= seen) {
                doubled++;
            } else {
                lost += id - seen - 1;
                seen = id;
                arrived.accept(id);
                if (id == lastId) {
                    complete.countDown();
                }
            }
        }
    }

    /** @param arrived told of each event at each client */
    EventCrowd(int port, int size, String query, long lastId, LongConsumer arrived) throws IOException {
        this.lastId = lastId;
        this.arrived = arrived;
        this.open = new CountDownLatch(size);
        this.complete = new CountDownLatch(size);
        thread.start();
        for (int i = 0; i < size; i++) {
            SocketChannel channel = SocketChannel.open(new InetSocketAddress("127.0.0.1", port));
            channel.write(ByteBuffer.wrap(("GET /v1/events" + query + " HTTP/1.1\r\nHost: localhost\r\n"
                + "Accept: text/event-stream\r\n\r\n").getBytes(StandardCharsets.US_ASCII)));
            channel.configureBlocking(false);
            Client client = new Client();
            clients.add(client);
            selector.wakeup();
            channel.register(selector, SelectionKey.OP_READ, client);
        }
    }

    boolean awaitOpen(long seconds) throws InterruptedException {
        return open.await(seconds, TimeUnit.SECONDS);
    }

    /** True where every client saw the last event in time. */
    boolean awaitComplete(long seconds) throws InterruptedException {
        return complete.await(seconds, TimeUnit.SECONDS);
    }

    long lost() {
        return clients.stream().mapToLong(client -> client.lost).sum();
    }

    long doubled() {
        return clients.stream().mapToLong(client -> client.doubled).sum();
    }

    private void run() {
        try {
            while (!closed) {
                selector.select(100);
                for (SelectionKey key : selector.selectedKeys()) {
                    read((SocketChannel) key.channel(), (Client) key.attachment());
                }
                selector.selectedKeys().clear();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void read(SocketChannel channel, Client client) throws IOException {
        buffer.clear();
        if (channel.read(buffer) < 0) {
            channel.close();
        }
        buffer.flip();
        while (buffer.hasRemaining()) {
            client.take(buffer.get());
        }
    }

    @Override
    public void close() throws IOException {
        closed = true;
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        for (SelectionKey key : selector.keys()) {
            key.channel().close();
        }
        selector.close();
    }
}
