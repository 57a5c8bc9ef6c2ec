package surfeit.lab;

import java.io.InputStream;
import java.util.Optional;

/** Reads a file kept with an import part by part; holds one part and no transaction. Not thread-safe. */
final class KeptFileStream extends InputStream {
    private final Store store;
    private final long importNumber;
    private final KeptFile.Kind kind;
    private byte[] part = {};
    private int at;
    private int next;

    KeptFileStream(Store store, long importNumber, KeptFile.Kind kind) {
        this.store = store;
        this.importNumber = importNumber;
        this.kind = kind;
    }

    @Override
    public int read() {
        return fill() ? part[at++] & 0xff : -1;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) {
        if (length == 0) {
            return 0;
        }
        if (!fill()) {
            return -1;
        }
        int count = Math.min(length, part.length - at);
        System.arraycopy(part, at, bytes, offset, count);
        at += count;
        return count;
    }

    private boolean fill() {
        while (at == part.length) {
            Optional<byte[]> found = store.read(access -> access.filePart(importNumber, kind, next));
            if (found.isEmpty()) {
                return false;
            }
            part = found.get();
            at = 0;
            next++;
        }
        return true;
    }
}
