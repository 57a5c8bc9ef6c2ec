package surfeit.http;

import java.io.IOException;

/** An answer that was waited for and can be given now. */
interface PendingAnswer {
    void give() throws IOException;

    /** Gives an answer that is made from something. */
    interface From<T> {
        void give(T from) throws IOException;
    }
}
