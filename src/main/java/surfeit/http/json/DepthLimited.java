package surfeit.http.json;

import java.io.FilterInputStream;
import java.io.InputStream;

/** The bytes of a body, and how deep JSON in it may nest. */
public final class DepthLimited extends FilterInputStream {
    private final int depthMax;

    /** @param depthMax levels of nesting */
    public DepthLimited(InputStream bytes, int depthMax) {
        super(bytes);
        this.depthMax = depthMax;
    }

    /** The deepest nesting bytes may have. */
    static int depthMax(InputStream bytes) {
        return bytes instanceof DepthLimited limited ? limited.depthMax : JsonFormat.DEPTH_MAX;
    }
}
