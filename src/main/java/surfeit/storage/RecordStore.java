package surfeit.storage;

import surfeit.lab.Store;

/** A store that holds on to something while it is open. */
public interface RecordStore extends Store, AutoCloseable {

    /** Waits for the write under way, then gives everything back. */
    @Override
    void close();
}
