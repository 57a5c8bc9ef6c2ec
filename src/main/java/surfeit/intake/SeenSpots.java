package surfeit.intake;

import java.util.Arrays;
import surfeit.spot.Spot;

/**
 * Which spots an upload held so far, in some 25 bytes a spot: enough to tell a repeat with the same values from one
 * with others, and where it came first.
 *
 * <p>Of a spot's name 64 bits are kept and of its values 32: among a million spots two names fall together once in 40
 * million uploads, and a repeat with other values passes for one with the same once in four thousand million. Open
 * addressing in many small parts, each made when first needed and grown by itself, so that a small upload costs little
 * and growing never needs the whole twice. Not thread-safe.
 */
final class SeenSpots {
    /** What an upload held of a spot's natural key before. */
    enum Before { NOTHING, THE_SAME, OTHER_VALUES }

    private static final int PART_BITS = 6;
    /** Slots of a part to begin with; a multiple of 8, which is what they grow by. */
    private static final int SLOTS = 32;

    private final Part[] parts = new Part[1 << PART_BITS];
    private int firstPlace;

    SeenSpots() {
        Arrays.fill(parts, Part.UNMADE);
    }

    /** Looks for the spot's key and, where it is new, remembers it with its place, which is above 0. */
    Before look(Spot spot, int place) {
        long key = SpotFingerprint.ofKey(spot.session(), spot.label(), spot.acquiredTime());
        return look(key, (int) SpotFingerprint.ofContent(spot), place);
    }

    /** The same for a spot that could not be made: whatever has its key later has other values. */
    void rememberRejected(long key, int place) {
        look(key, 0, place);
    }

    /** Place of the earlier spot that {@link #look} found last. */
    int firstPlace() {
        return firstPlace;
    }

    private Before look(long key, int content, int place) {
        int number = (int) (key >>> Long.SIZE - PART_BITS);
        if (parts[number] == Part.UNMADE) {
            parts[number] = new Part(SLOTS);
        }
        long earlier = parts[number].putIfAbsent(key, (long) content << Integer.SIZE | place);
        if (earlier == 0) {
            return Before.NOTHING;
        }
        firstPlace = (int) earlier;
        return (int) (earlier >> Integer.SIZE) == content ? Before.THE_SAME : Before.OTHER_VALUES;
    }

    /** One part: keys, and beside each the content in the upper and the place in the lower half; 0 is a free slot. */
    private static final class Part {
        private static final Part UNMADE = new Part(0);

        private long[] keys;
        private long[] facts;
        private int count;

        Part(int slots) {
            keys = new long[slots];
            facts = new long[slots];
        }

        /** Facts under the key so far, 0 where it is new. */
        long putIfAbsent(long key, long fact) {
            int slot = slot(keys, facts, key);
            if (facts[slot] != 0) {
                return facts[slot];
            }
            keys[slot] = key;
            facts[slot] = fact;
            count++;
            if (count > keys.length / 8 * 7) {
                grow();
            }
            return 0;
        }

        private static int slot(long[] keys, long[] facts, long key) {
            int slot = (int) ((key & 0xFFFFFFFFL) * keys.length >>> Integer.SIZE);
            while (facts[slot] != 0 && keys[slot] != key) {
                slot = slot + 1 == keys.length ? 0 : slot + 1;
            }
            return slot;
        }

        private void grow() {
            int size = keys.length / 8 * 12;
            long[] newKeys = new long[size];
            long[] newFacts = new long[size];
            for (int i = 0; i < keys.length; i++) {
                if (facts[i] != 0) {
                    int slot = slot(newKeys, newFacts, keys[i]);
                    newKeys[slot] = keys[i];
                    newFacts[slot] = facts[i];
                }
            }
            keys = newKeys;
            facts = newFacts;
        }
    }
}
