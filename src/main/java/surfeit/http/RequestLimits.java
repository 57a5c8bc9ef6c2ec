package surfeit.http;

import java.time.Duration;

/**
 * How much of requests the service takes, whatever they are about. Every refusal names the setting.
 *
 * @param uploadBytesMax       bytes of one uploaded table or NDJSON, after inflation
 * @param jsonBytesMax         bytes of one JSON body, after inflation
 * @param jsonDepthMax         levels of nesting in JSON
 * @param headerBytesMax       bytes of request line and header fields together
 * @param requestsPerSecondMax requests a second that one token may send
 * @param openStreamsMax       event streams open at the same time
 * @param arrivingBodiesMax    request bodies on their way at the same time
 * @param largeAnswersMax      answers above {@value #LARGE_BYTES} bytes on their way at the same time
 * @param bodyStall            longest pause within a body
 * @param bodyTotal            longest time for a whole body
 */
public record RequestLimits(long uploadBytesMax, long jsonBytesMax, int jsonDepthMax, int headerBytesMax,
    int requestsPerSecondMax,
                            int openStreamsMax, int arrivingBodiesMax, int largeAnswersMax,
                            Duration bodyStall, Duration bodyTotal) {
    /** An answer above this size may fill what the system keeps for a connection, and hold a thread. Judgement. */
    static final int LARGE_BYTES = 64 << 10;
    public static final String UPLOAD_BYTES_SETTING = "upload-bytes-max";
    public static final String JSON_BYTES_SETTING = "json-bytes-max";
    public static final String JSON_DEPTH_SETTING = "json-depth-max";
    public static final String HEADER_BYTES_SETTING = "header-bytes-max";
    public static final String REQUESTS_SETTING = "requests-per-second-max";
    public static final String STREAMS_SETTING = "open-streams-max";
    public static final String ARRIVING_SETTING = "arriving-bodies-max";
    public static final String LARGE_SETTING = "large-answers-max";
    public static final String STALL_SETTING = "body-stall-s";
    public static final String TOTAL_SETTING = "body-total-s";

    /**
     * 64 MiB an upload, 8 MiB of JSON, 20 levels (an upload of spots has five), 16 KiB of header (long filters in an
     * address still fit), 100 requests a second, 1024 streams, of 250 threads 100 for bodies on their way and 100 for
     * large answers, a pause of 60 s, 10 minutes in all. Judgement.
     */
    public static final RequestLimits DEFAULT = new RequestLimits(64L << 20, 8L << 20, 20, 16 << 10, 100, 1024, 100,
        100, Duration.ofSeconds(60), Duration.ofMinutes(10));

    public RequestLimits {
        requirePositive(UPLOAD_BYTES_SETTING, uploadBytesMax);
        requirePositive(JSON_BYTES_SETTING, jsonBytesMax);
        requirePositive(JSON_DEPTH_SETTING, jsonDepthMax);
        requirePositive(HEADER_BYTES_SETTING, headerBytesMax);
        requirePositive(REQUESTS_SETTING, requestsPerSecondMax);
        requirePositive(STREAMS_SETTING, openStreamsMax);
        requirePositive(ARRIVING_SETTING, arrivingBodiesMax);
        requirePositive(LARGE_SETTING, largeAnswersMax);
        requirePositive(STALL_SETTING, bodyStall.toMillis());
        requirePositive(TOTAL_SETTING, bodyTotal.toMillis());
    }

    private static void requirePositive(String setting, long value) {
        if (value < 1) {
            throw new IllegalArgumentException(setting + " is above 0, got " + value + ".");
        }
    }

    public RequestLimits withBytes(long upload, long json) {
        return new RequestLimits(upload, json, jsonDepthMax, headerBytesMax, requestsPerSecondMax, openStreamsMax,
            arrivingBodiesMax, largeAnswersMax, bodyStall, bodyTotal);
    }

    public RequestLimits withJsonDepth(int levels) {
        return new RequestLimits(uploadBytesMax, jsonBytesMax, levels, headerBytesMax, requestsPerSecondMax,
            openStreamsMax, arrivingBodiesMax, largeAnswersMax, bodyStall, bodyTotal);
    }

    public RequestLimits withRequestsPerSecond(int requests) {
        return new RequestLimits(uploadBytesMax, jsonBytesMax, jsonDepthMax, headerBytesMax, requests, openStreamsMax,
            arrivingBodiesMax, largeAnswersMax, bodyStall, bodyTotal);
    }

    public RequestLimits withOpenStreams(int streams) {
        return new RequestLimits(uploadBytesMax, jsonBytesMax, jsonDepthMax, headerBytesMax, requestsPerSecondMax,
            streams, arrivingBodiesMax, largeAnswersMax, bodyStall, bodyTotal);
    }

    public RequestLimits withArrivingBodies(int bodies) {
        return new RequestLimits(uploadBytesMax, jsonBytesMax, jsonDepthMax, headerBytesMax, requestsPerSecondMax,
            openStreamsMax, bodies, largeAnswersMax, bodyStall, bodyTotal);
    }

    public RequestLimits withLargeAnswers(int answers) {
        return new RequestLimits(uploadBytesMax, jsonBytesMax, jsonDepthMax, headerBytesMax, requestsPerSecondMax,
            openStreamsMax, arrivingBodiesMax, answers, bodyStall, bodyTotal);
    }

    public RequestLimits withTimes(Duration stall, Duration total) {
        return new RequestLimits(uploadBytesMax, jsonBytesMax, jsonDepthMax, headerBytesMax, requestsPerSecondMax,
            openStreamsMax, arrivingBodiesMax, largeAnswersMax, stall, total);
    }
}
