package surfeit.segregation.blocks;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.sums.GroupKey;
import surfeit.segregation.sums.GroupTally;
import surfeit.segregation.sums.References;
import surfeit.segregation.sums.SpotInHand;
import surfeit.segregation.sums.SumsIn;
import surfeit.segregation.sums.SumsOut;
import surfeit.spot.Spot;

/**
 * Sums of the spots of one stretch of the record, group by group; they grow as spots come, or as the stretch behind them
 * is put to them. Groups and particles stand in the order of first appearance. Not thread-safe.
 */
final class SpotBlock {
    /**
     * Places of a block. Judgement: reading as many spots again takes some hundredths of a second, and a million spots
     * are some sixty blocks.
     */
    static final int PLACES = 16_384;

    private final SpotInHand hand;
    private final GroupBy by;
    private final References references;
    private final GroupKey.Sought sought;
    private final Map<GroupKey, GroupTally> tallies = new LinkedHashMap<>();
    private final Set<String> particleNames = new LinkedHashSet<>();
    private final Set<String> sessionNames = new TreeSet<>();
    private Optional<GroupTally> last = Optional.empty();
    private long spotCount;
    private long places;

    SpotBlock(SpotInHand hand, GroupBy by, References references) {
        this.hand = hand;
        this.by = by;
        this.references = references;
        this.sought = new GroupKey.Sought(hand.sample(), by);
    }

    /** A block beside this one that holds nothing yet. */
    SpotBlock empty() {
        return new SpotBlock(hand, by, references);
    }

    /**
     * Adds the spot of the next place.
     *
     * @param known what the spots of a group are closed by; empty where that is to be taken from its first spot
     */
    void add(Spot spot, Function<GroupKey, Optional<GroupTally.Closing>> known) {
        String particle = GroupKey.particle(spot, hand.sample());
        places++;
        spotCount++;
        particleNames.add(particle);
        sessionNames.add(spot.session().orElse(""));
        tally(spot, known).add(spot, particle);
    }

    /** The next place is that of a spot that does not count. */
    void pass() {
        places++;
    }

    /** The tally a spot belongs to; mostly that of the spot before. */
    private GroupTally tally(Spot spot, Function<GroupKey, Optional<GroupTally.Closing>> known) {
        sought.of(spot);
        if (last.isEmpty() || !sought.equals(last.get().key())) {
            if (!tallies.containsKey(sought)) {
                GroupKey key = GroupKey.of(spot, hand.sample(), by);
                hand.take(spot);
                tallies.put(key, new GroupTally(hand, references, key,
                    known.apply(key).orElseGet(() -> GroupTally.Closing.of(hand))));
            }
            last = Optional.of(tallies.get(sought));
        }
        return last.get();
    }

    /** Takes in the block behind this one, which is of no use afterwards. */
    void merge(SpotBlock next) {
        last = Optional.empty();
        spotCount += next.spotCount;
        places += next.places;
        particleNames.addAll(next.particleNames);
        sessionNames.addAll(next.sessionNames);
        next.tallies.forEach((key, theirs) -> {
            if (tallies.containsKey(key)) {
                tallies.get(key).merge(theirs);
            } else {
                tallies.put(key, theirs);
            }
        });
    }

    void writeTo(SumsOut out) {
        out.count("spots", spotCount);
        out.count("places", places);
        out.texts("particle", particleNames);
        out.texts("session", sessionNames);
        out.count("groups", tallies.size());
        tallies.forEach((key, tally) -> {
            out.text("group", key.name());
            out.optionalReal("beam energy", key.beamEnergyKev());
            out.optionalText("session", key.session());
            tally.writeTo(out);
        });
    }

    /** Reads what another one wrote into this one, which holds nothing yet. */
    SpotBlock readFrom(SumsIn in) {
        spotCount = in.count();
        places = in.count();
        in.texts(particleNames);
        in.texts(sessionNames);
        for (long left = in.count(); left > 0; left--) {
            GroupKey key = new GroupKey(in.text(), in.optionalReal(), in.optionalText());
            tallies.put(key, GroupTally.readFrom(in, hand, references, key));
        }
        in.requireEnd();
        return this;
    }

    /** True where a group showed later what it did not show first: it has no sums. */
    boolean isStale() {
        return tallies.values().stream().anyMatch(GroupTally::isStale);
    }

    Map<GroupKey, GroupTally> tallies() {
        return tallies;
    }

    Collection<String> particleNames() {
        return particleNames;
    }

    Collection<String> sessionNames() {
        return sessionNames;
    }

    long spotCount() {
        return spotCount;
    }

    /** Places so far, those of spots that do not count among them. */
    long places() {
        return places;
    }
}
