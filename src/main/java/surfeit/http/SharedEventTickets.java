package surfeit.http;

import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import surfeit.lab.Access;
import surfeit.lab.SharedTickets;
import surfeit.lab.Token;
import surfeit.lab.TokenRequest;

/** Tickets kept beside a record that several programs share: one taken from one opens a stream of another. Thread-safe. */
final class SharedEventTickets implements Tickets {
    private final SharedTickets kept;
    private final Access access;
    private final Clock clock;
    private final boolean asksNobody;

    /** @param asksNobody whether this program lets in everybody, tokens or not */
    SharedEventTickets(SharedTickets kept, Access access, Clock clock, boolean asksNobody) {
        this.kept = kept;
        this.access = access;
        this.clock = clock;
        this.asksNobody = asksNobody;
    }

    @Override
    public Issued issue(Admission owner, Instant now) {
        String ticket = Tickets.random();
        if (!kept.keep(Tickets.hash(ticket), owner.token(), (int) VALID.toSeconds(), MOST)) {
            throw Tickets.tooMany();
        }
        return new Issued(ticket, now.plus(VALID));
    }

    @Override
    public Optional<Admission> redeem(String ticket) {
        return kept.take(Tickets.hash(ticket), (int) VALID.toSeconds()).map(this::admission)
            .filter(owner -> owner.stillHolds().getAsBoolean());
    }

    private Admission admission(SharedTickets.Taken taken) {
        if (taken.token().isEmpty()) {
            return new Admission(TokenRequest.ANYONE, Optional.empty(),
                () -> asksNobody || access.isStillOpen(clock.instant()));
        }
        Token token = access.token(taken.token().get());
        return new Admission(token.name(), Optional.of(token.id()),
            () -> asksNobody || access.isValid(token.id(), clock.instant()));
    }
}
