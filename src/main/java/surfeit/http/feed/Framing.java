package surfeit.http.feed;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** How events stand in a stream. */
public enum Framing {
    /** Server-sent events: WHATWG HTML, section 9.2. */
    SERVER_SENT {
        @Override
        void event(ByteArrayOutputStream out, long id, String type, byte[] json) {
            text(out, "id: " + id + "\nevent: " + type + "\ndata: ");
            out.writeBytes(json);
            text(out, "\n\n");
        }

        /** A block without data changes no more than the id a client names when it comes again, so nothing is missed. */
        @Override
        void opening(ByteArrayOutputStream out, long id) {
            text(out, "retry: " + RETRY_MILLIS + "\nid: " + id + "\n\n");
        }

        @Override
        byte[] alive() {
            return ALIVE_COMMENT;
        }
    },
    /** One JSON document a line; an empty line says that the stream lives. */
    LINES {
        @Override
        void event(ByteArrayOutputStream out, long id, String type, byte[] json) {
            out.writeBytes(json);
            out.write('\n');
        }

        @Override
        void opening(ByteArrayOutputStream out, long id) {
            // every line is an event: a stream that starts now has none yet
        }

        @Override
        byte[] alive() {
            return EMPTY_LINE;
        }
    };

    /** How long a browser waits before it comes again. Judgement. */
    private static final int RETRY_MILLIS = 2000;
    private static final byte[] ALIVE_COMMENT = ": alive\n\n".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] EMPTY_LINE = {'\n'};

    abstract void event(ByteArrayOutputStream out, long id, String type, byte[] json);

    /** What comes first. @param id the event after which the stream goes on */
    abstract void opening(ByteArrayOutputStream out, long id);

    /** What shows that the stream lives while nothing happens. */
    abstract byte[] alive();

    private static void text(ByteArrayOutputStream out, String text) {
        out.writeBytes(text.getBytes(StandardCharsets.US_ASCII));
    }
}
