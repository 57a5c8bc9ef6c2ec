package surfeit.bench;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Iterator;
import java.util.Locale;
import java.util.function.IntFunction;

/**
 * Sends requests over many kept connections from one thread, each connection its next request once its answer is
 * whole. Answers have a Content-Length or no body.
 */
public final class LoadDriver {
    private static final int BUFFER = 1 << 17;
    private static final double NANOS_PER_S = 1e9;
    private static final double NANOS_PER_MS = 1e6;

    /** What came of it. */
    public record Load(double perSecond, double p50Ms, double p99Ms) {
    }

    private final IntFunction<byte[]> requests;
    private final int count;
    private final long[] times;
    private final Selector selector;
    private int begun;
    private int done;

    private LoadDriver(int count, IntFunction<byte[]> requests) throws IOException {
        this.requests = requests;
        this.count = count;
        this.times = new long[count];
        this.selector = Selector.open();
    }

    /** @param requests makes the bytes of a request by its number, from 0 */
    static Load run(int port, int connections, int count, IntFunction<byte[]> requests) throws IOException {
        return run(new int[] {port}, connections, count, requests);
    }

    /** The same over connections to each of several services in turn. */
    public static Load run(int[] ports, int connections, int count, IntFunction<byte[]> requests) throws IOException {
        LoadDriver driver = new LoadDriver(count, requests);
        Connection[] all = new Connection[connections];
        for (int i = 0; i < connections; i++) {
            all[i] = driver.new Connection(ports[i % ports.length]);
        }
        long start = System.nanoTime();
        for (Connection connection : all) {
            connection.next();
        }
        driver.work();
        double seconds = (System.nanoTime() - start) / NANOS_PER_S;
        for (Connection connection : all) {
            connection.channel.close();
        }
        driver.selector.close();
        Arrays.sort(driver.times);
        return new Load(count / seconds, driver.times[count / 2] / NANOS_PER_MS,
            driver.times[(int) (count * 0.99)] / NANOS_PER_MS);
    }

    private void work() throws IOException {
        while (done < count) {
            selector.select();
            for (Iterator<SelectionKey> keys = selector.selectedKeys().iterator(); keys.hasNext();) {
                SelectionKey key = keys.next();
                keys.remove();
                ((Connection) key.attachment()).go(key);
            }
        }
    }

    /** One connection with its request under way. */
    private final class Connection {
        private final SocketChannel channel;
        private final SelectionKey key;
        private final ByteBuffer in = ByteBuffer.allocate(BUFFER);
        private ByteBuffer out = ByteBuffer.allocate(0);
        private int number;
        private long sent;
        private long expected = -1;
        private long arrived;

        Connection(int port) throws IOException {
            channel = SocketChannel.open(new InetSocketAddress("127.0.0.1", port));
            channel.setOption(java.net.StandardSocketOptions.TCP_NODELAY, true);
            channel.configureBlocking(false);
            key = channel.register(selector, 0, this);
        }

        void next() throws IOException {
            if (begun == count) {
                key.interestOps(0);
                return;
            }
            number = begun++;
            out = ByteBuffer.wrap(requests.apply(number));
            in.clear();
            expected = -1;
            arrived = 0;
            sent = System.nanoTime();
            write();
        }

        private void write() throws IOException {
            channel.write(out);
            key.interestOps(out.hasRemaining() ? SelectionKey.OP_WRITE : SelectionKey.OP_READ);
        }

        void go(SelectionKey ready) throws IOException {
            if (ready.isWritable()) {
                write();
            } else if (ready.isReadable()) {
                read();
            }
        }

        private void read() throws IOException {
            if (expected >= 0) {
                in.clear(); // the head is known; of the body only the length counts
            }
            int read = channel.read(in);
            if (read < 0) {
                throw new IOException("The service closed a connection under request " + number + ".");
            }
            arrived += read;
            if (expected < 0) {
                readHead();
            }
            if (expected >= 0 && arrived >= expected) {
                times[number] = System.nanoTime() - sent;
                done++;
                next();
            }
        }

        private void readHead() throws IOException {
            String head = new String(in.array(), 0, in.position(), StandardCharsets.ISO_8859_1);
            int end = head.indexOf("\r\n\r\n");
            if (end < 0) {
                return;
            }
            if (!head.startsWith("HTTP/1.1 2") && !head.startsWith("HTTP/1.1 304")) {
                throw new IOException("Request " + number + ": " + head);
            }
            int length = head.toLowerCase(Locale.ROOT).indexOf("\r\ncontent-length:");
            int from = length + "\r\ncontent-length:".length();
            expected = end + 4 + (length < 0 || length > end ? 0
                : Long.parseLong(head.substring(from, head.indexOf('\r', from)).strip()));
        }
    }

    /** A request with a body of JSON, or without a body. */
    public static byte[] request(String method, String path, String body, String... headers) {
        StringBuilder head = new StringBuilder(method + " " + path + " HTTP/1.1\r\nHost: localhost\r\n");
        for (String header : headers) {
            head.append(header).append("\r\n");
        }
        if (!body.isEmpty()) {
            head.append("Content-Type: application/json\r\nContent-Length: ")
                .append(body.getBytes(StandardCharsets.UTF_8).length).append("\r\n");
        }
        return (head + "\r\n" + body).getBytes(StandardCharsets.UTF_8);
    }
}
