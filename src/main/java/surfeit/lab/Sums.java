package surfeit.lab;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.GroupNotes;
import surfeit.segregation.blocks.SampleSums;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Spot;

/**
 * Keeps the sums of samples beside their spots, in the transaction that changes these, so that an answer costs by
 * particles and not by spots.
 *
 * <p>One rule: where more spots came since the sums than {@value #LATER_SPOTS_MAX}, or than the sample has particles,
 * the sums go on to the last spot. So an answer adds few spots to the sums, and a single spot costs the same at any
 * size of the sample on average. They go on at once where a spot shows an element or a negative value that its group
 * did not have, for that has the group read again. Where a spot in the sums changes, only the block of spots is read
 * again that it lies in. Whatever changes an input of them, and a change for which one block is not enough, has them
 * forgotten and, by the same rule, made anew from all spots. That would hold up all other writers where a sample has
 * more than {@value #AT_ONCE_MAX} spots: of such a sample they are only forgotten, and the next answer, which has to read
 * all spots anyway, makes them ({@link #catchUp}). Thread-safe.
 */
final class Sums {
    /** Later spots an answer may have to read, at least. Judgement: they cost as much as the rest of an answer. */
    static final int LATER_SPOTS_MAX = 256;
    /** Spots that are read within the transaction that changes one of them: some tenths of a second. Judgement. */
    static final int AT_ONCE_MAX = 20_000;
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

    /** Spots may have been recorded. Reference spots among them may correct all others. */
    void imported(WriteAccess access, String name, SpotImport work) {
        if (work.firstRecorded().isEmpty()) {
            return;
        }
        StoredSample present = Lookups.sample(access, name);
        if (work.hasRecordedReferences()) {
            forget(access, present);
        }
        keep(access, present, work.firstRecorded(), work.sumsAlong());
    }

    /**
     * Sums to be made while an upload goes on that has recorded this many spots already; empty where they may not be due
     * when it ends.
     */
    Optional<SumsAlong> along(WriteAccess access, StoredSample before, long recorded) {
        if (!SampleSums.canBeKept(before.sample()) || areBehind(access, before)) {
            return Optional.empty();
        }
        Map<GroupBy, Integer> due = due(access.sumsMarks(before), before.spotCount() + recorded);
        return due.isEmpty() ? Optional.empty()
            : answers.growingSums(access, before, access.spotSource(before), due).map(sums -> new SumsAlong(due.keySet(), sums));
    }

    /** A spot got a further revision, or stayed as it is. @return the same spot */
    StoredSpot revised(WriteAccess access, StoredSpot now) {
        StoredSample present = Lookups.sample(access, now.sample());
        long number = Lookups.spotNumber(now.id());
        Map<GroupBy, Integer> changed = new EnumMap<>(GroupBy.class);
        boolean onReference = false;
        for (Map.Entry<GroupBy, SumsMark> each : access.sumsMarks(present).entrySet()) {
            SumsMark mark = each.getValue();
            boolean isOlder = mark.revision() < now.sampleRevision();
            onReference |= isOlder && now.spot().isReference();
            if (isOlder && number <= mark.lastSpot() && mark.hasSums()) {
                changed.put(each.getKey(), particlesMax(each.getKey()));
            }
        }
        if (onReference) {
            inputsChanged(access, present);
        } else if (!changed.isEmpty()) {
            Map<GroupBy, SampleSums> made = answers.sumsAfterChange(access, present, changed, number);
            made.forEach((by, sums) -> access.keepSums(present, by, Optional.of(sums)));
            changed.keySet().removeAll(made.keySet());
            changed.keySet().forEach(by -> access.forgetSums(present, by));
            if (!changed.isEmpty()) {
                keep(access, present, List.of(), Optional.empty());
            }
        }
        return now;
    }

    /** What the sums were made from is no longer so. */
    void inputsChanged(WriteAccess access, StoredSample present) {
        forget(access, present);
        keep(access, present, List.of(), Optional.empty());
    }

    /** Makes the sums anew from all spots, however many. */
    void renew(WriteAccess access, StoredSample present) {
        forget(access, present);
        if (isWorthIt(present)) {
            make(access, present, due(Map.of(), present.spotCount()), Optional.empty());
        }
    }

    private static void forget(WriteAccess access, StoredSample present) {
        for (GroupBy by : GroupBy.values()) {
            access.forgetSums(present, by);
        }
    }

    /** Whether a sample of many spots lacks sums that it could have. */
    static boolean areBehind(ReadAccess access, StoredSample sample) {
        return sample.spotCount() > AT_ONCE_MAX && SampleSums.canBeKept(sample.sample())
            && access.sumsMarks(sample).size() < GroupBy.values().length;
    }

    /**
     * Makes the sums that a sample lacks, while others record; keeps them where its spots are still the same when they
     * are made.
     */
    void catchUp(Store store, String name) {
        Made made = store.read(access -> {
            StoredSample sample = Lookups.sample(access, name);
            Map<GroupBy, Integer> due = due(access.sumsMarks(sample), sample.spotCount());
            due.keySet().removeAll(access.sumsMarks(sample).keySet());
            return new Made(sample.revision(), due.keySet(), answers.sums(access, sample, access.spotSource(sample), due));
        });
        try {
            store.write(access -> keep(access, name, made));
        } catch (ProblemException e) {
            // The answer does not depend on it: it is made from the spots, and so is the next one.
        }
    }

    private static StoredSample keep(WriteAccess access, String name, Made made) {
        StoredSample present = Lookups.sample(access, name);
        if (present.revision() == made.revision() && areBehind(access, present)) {
            Set<GroupBy> since = Set.copyOf(access.sumsMarks(present).keySet());
            made.ways().stream().filter(by -> !since.contains(by))
                .forEach(by -> access.keepSums(present, by, Optional.ofNullable(made.sums().get(by))));
        }
        return present;
    }

    /** @param ways all ways of grouping that were tried */
    private record Made(long revision, Set<GroupBy> ways, Map<GroupBy, SampleSums> sums) {
    }

    /** An alloy was stated otherwise than before. */
    void alloyStated(WriteAccess access, String alloy) {
        SampleFilter ofAlloy = new SampleFilter(Optional.of(alloy), Optional.empty());
        Optional<String> after = Optional.empty();
        List<StoredSample> samples;
        do {
            samples = access.samples(ofAlloy, after, SAMPLES_AT_ONCE);
            for (StoredSample sample : samples) {
                inputsChanged(access, sample);
                after = Optional.of(sample.name());
            }
        } while (samples.size() == SAMPLES_AT_ONCE);
    }

    private void keep(WriteAccess access, StoredSample present, List<Spot> added, Optional<SumsAlong> along) {
        if (!isWorthIt(present) || areBehind(access, present) && along.isEmpty()) {
            return;
        }
        Map<GroupBy, Integer> due = due(access.sumsMarks(present), present.spotCount());
        if (due.isEmpty()) {
            access.sumsNotes(present).forEach((by, notes) -> {
                if (GroupNotes.areDisturbed(notes, present.sample(), by, added)) {
                    due.put(by, particlesMax(by));
                }
            });
        }
        make(access, present, due, along);
    }

    private static boolean isWorthIt(StoredSample sample) {
        return sample.spotCount() > LATER_SPOTS_MAX && SampleSums.canBeKept(sample.sample());
    }

    private void make(WriteAccess access, StoredSample present, Map<GroupBy, Integer> due, Optional<SumsAlong> along) {
        if (due.isEmpty()) {
            return;
        }
        SpotSource source = access.spotSource(present);
        Map<GroupBy, SampleSums> made = along.filter(sums -> sums.ways().equals(due.keySet()))
            .map(sums -> sums.finish(source)).orElseGet(() -> answers.sums(access, present, source, due));
        due.keySet().forEach(by -> access.keepSums(present, by, Optional.ofNullable(made.get(by))));
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
