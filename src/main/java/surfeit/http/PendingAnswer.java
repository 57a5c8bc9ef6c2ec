package surfeit.http;

import java.io.IOException;

/** An answer that can be given now. */
interface PendingAnswer {
    void give() throws IOException;
}
