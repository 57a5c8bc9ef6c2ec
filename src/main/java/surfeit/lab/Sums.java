package surfeit.lab;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.GroupNotes;
import surfeit.segregation.blocks.SampleSums;
import surfeit.spot.Spot;

/**
 * Keeps the sums of samples beside their spots, in the transaction that changes these, so that an answer costs by
 * particles and not by spots.
 *
 * <p>One rule: where more spots came since the sums than {@value #LATER_SPOTS_MAX}, or than the sample has particles,
 * the sums go on to the last spot. So an answer adds few spots to the sums, and a single spot costs the same at any
 * size of the sample on average. They go on at once where a spot shows an element or a negative value that its group
 * did not have, where it is one on a reference piece, where a spot, the description or the alloy changed. Whatever of
 * them was made from other inputs than there are now is made anew then from all spots, however many: nobody else can
 * record meanwhile. Where a spot in the sums changed, only the block of spots is read again that it lies in, unless that
 * is not enough. Thread-safe.
 */
final class Sums {
    /** Later spots an answer may have to read, at least. Judgement: they cost as much as the rest of an answer. */
    static final int LATER_SPOTS_MAX = 256;
    /** Bounds the memory and the bytes the sums of one sample may take: some 10 to 20 MB. Judgement. */
    private static final int PARTICLES_MAX = 8192;
    /** The same where every particle is a group with sums of its own. */
    private static final int PARTICLES_AS_GROUPS_MAX = 2048;
    private static final int SAMPLES_AT_ONCE = 200;

    private final Answers answers;

    Sums(Answers answers) {
        this.answers = answers;
    }

    private static int particlesMax(GroupBy by) {
        return by == GroupBy.PARTICLE ? PARTICLES_AS_GROUPS_MAX : PARTICLES_MAX;
    }

    /**
     * Spots may have been recorded. Reference spots among them may correct all others. Uploads that share a transaction
     * have the sums go on once, at its end.
     */
    void imported(WriteAccess access, String name, SpotImport work) {
        if (work.firstRecorded().isEmpty()) {
            return;
        }
        StoredSample present = Lookups.sample(access, name);
        if (!isWorthIt(present)) {
            return;
        }
        Map<GroupBy, Integer> due = due(access.sumsMarks(present), present.spotCount());
        Optional<SumsAlong> along = work.sumsAlong().filter(sums -> sums.ways().equals(due.keySet()));
        if (along.isPresent()) {
            keep(access, present, due.keySet(), Optional.of(along.get().finish(access.spotSource(present))));
        } else if (!due.isEmpty() || work.hasRecordedReferences() || areDisturbed(access, present, work.firstRecorded())) {
            access.last(name, end -> goOn(end, Lookups.sample(end, name)));
        }
    }

    private static boolean areDisturbed(WriteAccess access, StoredSample present, List<Spot> added) {
        return access.sumsNotes(present).entrySet().stream().anyMatch(notes ->
            GroupNotes.areDisturbed(notes.getValue(), present.sample(), notes.getKey(), added));
    }

    /**
     * Sums to be made while an upload goes on that has recorded this many spots already; empty where they may not be due
     * when it ends.
     */
    Optional<SumsAlong> along(WriteAccess access, StoredSample before, long recorded) {
        if (!SampleSums.canBeKept(before.sample())) {
            return Optional.empty();
        }
        Map<GroupBy, Integer> due = due(access.sumsMarks(before), before.spotCount() + recorded);
        return due.isEmpty() ? Optional.empty()
            : answers.growingSums(access, before, access.spotSource(before), due)
                .map(sums -> new SumsAlong(due.keySet(), sums));
    }

    /** A spot got a further revision, or stayed as it is. @return the same spot */
    StoredSpot revised(WriteAccess access, StoredSpot now) {
        StoredSample present = Lookups.sample(access, now.sample());
        Map<GroupBy, Integer> ways = new EnumMap<>(GroupBy.class);
        access.sumsMarks(present).forEach((by, mark) -> {
            if (mark.hasSums() && mark.revision() < now.sampleRevision()) {
                ways.put(by, particlesMax(by));
            }
        });
        if (!ways.isEmpty()) {
            keep(access, present, ways.keySet(),
                answers.sumsAfterChange(access, present, ways, Lookups.spotNumber(now.id())));
        }
        return now;
    }

    /** A sample was described, for the first time or otherwise than before. */
    void described(WriteAccess access, Optional<StoredSample> before, StoredSample now) {
        boolean otherParticles = before.filter(sample ->
            sample.sample().spotsIndependent() != now.sample().spotsIndependent()).isPresent();
        if (otherParticles) {
            forgetKept(access, now);
        }
        goOn(access, now);
    }

    /** Makes the sums anew from all spots, however many. */
    void renew(WriteAccess access, StoredSample present) {
        forgetKept(access, present);
        goOn(access, present);
    }

    /** An alloy was stated otherwise than before. */
    void alloyStated(WriteAccess access, String alloy) {
        SampleFilter ofAlloy = new SampleFilter(Optional.of(alloy), Optional.empty());
        Optional<String> after = Optional.empty();
        List<StoredSample> samples;
        do {
            samples = access.samples(ofAlloy, after, SAMPLES_AT_ONCE);
            for (StoredSample sample : samples) {
                goOn(access, sample);
                after = Optional.of(sample.name());
            }
        } while (samples.size() == SAMPLES_AT_ONCE);
    }

    private static void forgetKept(WriteAccess access, StoredSample present) {
        access.sumsMarks(present).keySet().forEach(by -> access.forgetSums(present, by));
    }

    private static boolean isWorthIt(StoredSample sample) {
        return sample.spotCount() > LATER_SPOTS_MAX && SampleSums.canBeKept(sample.sample());
    }

    /** Has all sums go on to the last spot, but for those of which it is known that the sample has too many particles. */
    private void goOn(WriteAccess access, StoredSample present) {
        if (!isWorthIt(present)) {
            forgetKept(access, present);
            return;
        }
        Map<GroupBy, Integer> ways = new EnumMap<>(GroupBy.class);
        for (GroupBy by : GroupBy.values()) {
            if (Optional.ofNullable(access.sumsMarks(present).get(by)).map(SumsMark::hasSums).orElse(true)) {
                ways.put(by, particlesMax(by));
            }
        }
        if (!ways.isEmpty()) {
            keep(access, present, ways.keySet(), answers.sums(access, present, access.spotSource(present), ways));
        }
    }

    /** @param made of those of these ways that have no more particles than they may; empty where nothing can be compared */
    private static void keep(WriteAccess access, StoredSample present, Set<GroupBy> ways,
                             Optional<Map<GroupBy, SampleSums>> made) {
        if (made.isEmpty()) {
            forgetKept(access, present);
        }
        made.ifPresent(sums -> ways.forEach(by -> access.keepSums(present, by, Optional.ofNullable(sums.get(by)))));
    }

    private static Map<GroupBy, Integer> due(Map<GroupBy, SumsMark> marks, long spotCount) {
        Map<GroupBy, Integer> due = new EnumMap<>(GroupBy.class);
        for (GroupBy by : GroupBy.values()) {
            if (isDue(Optional.ofNullable(marks.get(by)), spotCount)) {
                due.put(by, particlesMax(by));
            }
        }
        return due;
    }

    private static boolean isDue(Optional<SumsMark> mark, long spotCount) {
        if (mark.isPresent() && !mark.get().hasSums()) {
            return false;
        }
        long later = spotCount - mark.map(SumsMark::spotCount).orElse(0L);
        return later > Math.max(LATER_SPOTS_MAX, mark.map(SumsMark::particleCount).orElse(0));
    }
}
