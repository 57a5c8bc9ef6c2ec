package surfeit.http;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Tickets kept in memory, by their hash: no other program could be asked for one. Thread-safe.
 */
final class EventTickets implements Tickets {
    private final LongSupplier nanoTime;
    private final Map<String, Kept> byHash = new HashMap<>();

    /** @param nanoTime a clock that never goes back, in nanoseconds from any start */
    EventTickets(LongSupplier nanoTime) {
        this.nanoTime = nanoTime;
    }

    private record Kept(Admission owner, long issuedNanos) {
    }

    @Override
    public synchronized Issued issue(Admission owner, Instant now) {
        byHash.values().removeIf(kept -> !isInTime(kept));
        if (byHash.size() >= MOST) {
            throw Tickets.tooMany();
        }
        String ticket = Tickets.random();
        byHash.put(Tickets.hash(ticket), new Kept(owner, nanoTime.getAsLong()));
        return new Issued(ticket, now.plus(VALID));
    }

    @Override
    public synchronized Optional<Admission> redeem(String ticket) {
        return Optional.ofNullable(byHash.remove(Tickets.hash(ticket))).filter(this::isInTime).map(Kept::owner)
            .filter(owner -> owner.stillHolds().getAsBoolean());
    }

    private boolean isInTime(Kept kept) {
        return nanoTime.getAsLong() - kept.issuedNanos() < VALID.toNanos();
    }
}
