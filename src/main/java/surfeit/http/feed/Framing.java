package surfeit.http.feed;

import java.nio.charset.StandardCharsets;

/** How events stand in a stream. */
public enum Framing {
    /** Server-sent events: WHATWG HTML, section 9.2. */
    SERVER_SENT {
        @Override
        byte[] event(EncodedEvent event) {
            return event.block();
        }

        /**
         * A block without data changes no more than the id a client names when it comes again, so nothing is missed.
         */
        @Override
        byte[] opening(long id) {
            return ("retry: " + RETRY_MILLIS + "\nid: " + id + "\n\n").getBytes(StandardCharsets.US_ASCII);
        }

        @Override
        byte[] alive() {
            return ALIVE_COMMENT;
        }
    },
    /** One JSON document a line; an empty line says that the stream lives. */
    LINES {
        @Override
        byte[] event(EncodedEvent event) {
            return event.line();
        }

        /** Every line is an event: a stream that starts now has none yet. */
        @Override
        byte[] opening(long id) {
            return NOTHING;
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
    private static final byte[] NOTHING = {};

    /** One event; the bytes are shared and not changed. */
    abstract byte[] event(EncodedEvent event);

    /** What comes first. @param id the event after which the stream goes on */
    abstract byte[] opening(long id);

    /** What shows that the stream lives while nothing happens. */
    abstract byte[] alive();
}
