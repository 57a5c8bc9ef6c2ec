package surfeit.lab;

import java.io.IOException;
import java.io.InputStream;

/** A whole copy of the record, to be read once; closing it removes it. Not thread-safe. */
public record Backup(BackupReport report, InputStream bytes) implements AutoCloseable {

    @Override
    public void close() throws IOException {
        bytes.close();
    }
}
