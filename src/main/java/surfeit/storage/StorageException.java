package surfeit.storage;

/** The record cannot be opened, read or written; the message says why and what to do, in plain words. */
public final class StorageException extends RuntimeException {

    public StorageException(String message) {
        super(message);
    }

    public StorageException(String message, Throwable cause) {
        super(message, cause);
    }
}
