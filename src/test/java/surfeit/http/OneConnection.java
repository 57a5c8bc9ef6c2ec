package surfeit.http;

import com.sun.management.OperatingSystemMXBean;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.net.Socket;
import java.util.Locale;

/** Sends one request again and again over one connection and says what it costs. */
final class OneConnection {
    private static final OperatingSystemMXBean PROCESS =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    private OneConnection() {
    }

    /** Mean cost of one request: by the clock, and in processor time of this process, which other programs do not add to. */
    record Cost(double nanos, double cpuNanos) {
    }

    static Cost send(int port, byte[] request, int times) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.setTcpNoDelay(true);
            InputStream in = new BufferedInputStream(socket.getInputStream(), 1 << 16);
            long start = System.nanoTime();
            long cpu = PROCESS.getProcessCpuTime();
            for (int i = 0; i < times; i++) {
                socket.getOutputStream().write(request);
                skipAnswer(in);
            }
            return new Cost((double) (System.nanoTime() - start) / times,
                (double) (PROCESS.getProcessCpuTime() - cpu) / times);
        }
    }

    private static void skipAnswer(InputStream in) throws IOException {
        int length = 0;
        String line = line(in);
        if (!line.contains(" 200")) {
            throw new IOException(line);
        }
        while (!line.isEmpty()) {
            if (line.toLowerCase(Locale.ROOT).startsWith("content-length:")) {
                length = Integer.parseInt(line.substring(15).strip());
            }
            line = line(in);
        }
        in.skipNBytes(length);
    }

    private static String line(InputStream in) throws IOException {
        StringBuilder line = new StringBuilder();
        for (int c = in.read(); c != '\n'; c = in.read()) {
            if (c < 0) {
                throw new IOException("The answer broke off.");
            }
            if (c != '\r') {
                line.append((char) c);
            }
        }
        return line.toString();
    }
}
