package surfeit.lab;

import java.util.Optional;

/** Where passes for event streams wait to be used, for every program on one record. Thread-safe. */
public interface SharedTickets {

    /**
     * Keeps a pass.
     *
     * @param sha256 of the pass, in hex
     * @param token  id of the token it was taken with, if one was asked for
     * @param most   passes that may wait at the same time
     * @return false where so many wait already
     */
    boolean keep(String sha256, Optional<String> token, int validSeconds, int most);

    /** Takes a pass out: for one caller, once. Empty where it is unknown, used, or too old. */
    Optional<Taken> take(String sha256, int validSeconds);

    /** A pass that was used, and the id of the token it was taken with. */
    record Taken(Optional<String> token) {
    }
}
