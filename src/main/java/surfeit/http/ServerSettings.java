package surfeit.http;

import java.time.Duration;

/**
 * Where the service listens and how much it takes.
 *
 * @param host            address to listen on, {@code 127.0.0.1}
 * @param port            port; 0 takes a free one
 * @param uploadBytesMax  bytes of one uploaded table or NDJSON, after inflation
 * @param jsonBytesMax    bytes of one JSON body, after inflation
 * @param uploadRowsMax   rows of one table, or spots of one body
 * @param bodyStall       longest pause within a body
 * @param bodyTotal       longest time for a whole body
 * @param stopPatience    how long running requests may go on when the service stops
 */
public record ServerSettings(String host, int port, long uploadBytesMax, long jsonBytesMax, int uploadRowsMax,
                             Duration bodyStall, Duration bodyTotal, Duration stopPatience) {
    public static final String UPLOAD_BYTES_SETTING = "upload-bytes-max";
    public static final String JSON_BYTES_SETTING = "json-bytes-max";

    /**
     * Loopback, port 8420; 64 MiB an upload, 8 MiB of JSON, a million rows; a pause of 60 s, 10 minutes in all.
     * Judgement.
     */
    public static final ServerSettings DEFAULT = new ServerSettings("127.0.0.1", 8420, 64L << 20, 8L << 20,
        1_000_000, Duration.ofSeconds(60), Duration.ofMinutes(10), Duration.ofSeconds(10));

    public ServerSettings {
        require(port >= 0 && port <= 65_535, "port lies between 0 and 65535, got " + port + ".");
        require(uploadBytesMax > 0, UPLOAD_BYTES_SETTING + " is above 0, got " + uploadBytesMax + ".");
        require(jsonBytesMax > 0, JSON_BYTES_SETTING + " is above 0, got " + jsonBytesMax + ".");
        require(uploadRowsMax > 0, "upload-rows-max is above 0, got " + uploadRowsMax + ".");
        require(!bodyStall.isNegative() && !bodyStall.isZero(), "The pause within a body is above 0 s, got " + bodyStall
            + ".");
        require(!bodyTotal.isNegative() && !bodyTotal.isZero(), "The time for a body is above 0 s, got " + bodyTotal
            + ".");
    }

    private static void require(boolean holds, String message) {
        if (!holds) {
            throw new IllegalArgumentException(message);
        }
    }

    public ServerSettings withPort(int other) {
        return new ServerSettings(host, other, uploadBytesMax, jsonBytesMax, uploadRowsMax, bodyStall, bodyTotal,
            stopPatience);
    }
}
