package surfeit.lab;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import surfeit.segregation.GroupBy;
import surfeit.segregation.GroupNotes;
import surfeit.segregation.SampleSums;
import surfeit.spot.Spot;

/**
 * Keeps the sums of samples beside their spots, in the transaction that changes these, so that an answer costs by
 * particles and not by spots.
 *
 * <p>One rule: where more spots came since the sums than {@value #LATER_SPOTS_MAX}, or than the sample has particles,
 * the sums go on to the last spot. So an answer adds few spots to the sums, and a single spot costs the same at any
 * size of the sample on average. They go on at once where a spot shows an element or a negative value that its group
 * did not have, for that has the group read again. Whatever changes a spot in the sums, or an input of them, has them
 * forgotten and, by the same rule, made anew from all spots. Thread-safe.
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

    /** Spots may have been recorded. Reference spots among them may correct all others. */
    void imported(WriteAccess access, String name, SpotImport work) {
        if (work.firstRecorded().isEmpty()) {
            return;
        }
        StoredSample present = Lookups.sample(access, name);
        if (work.hasRecordedReferences()) {
            access.forgetSums(present);
        }
        keep(access, present, work.firstRecorded());
    }

    /** A spot got a further revision, or stayed as it is. @return the same spot */
    StoredSpot revised(WriteAccess access, StoredSpot now) {
        StoredSample present = Lookups.sample(access, now.sample());
        boolean changed = access.sumsMarks(present).values().stream()
            .anyMatch(mark -> mark.revision() < now.sampleRevision()
                && (now.spot().isReference() || Lookups.spotNumber(now.id()) <= mark.lastSpot()));
        if (changed) {
            inputsChanged(access, present);
        }
        return now;
    }

    /** What the sums were made from is no longer so. */
    void inputsChanged(WriteAccess access, StoredSample present) {
        access.forgetSums(present);
        keep(access, present, List.of());
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

    private void keep(WriteAccess access, StoredSample present, List<Spot> added) {
        if (present.spotCount() <= LATER_SPOTS_MAX || !SampleSums.canBeKept(present.sample())) {
            return;
        }
        Map<GroupBy, SumsMark> marks = access.sumsMarks(present);
        Map<GroupBy, Integer> due = new EnumMap<>(GroupBy.class);
        for (GroupBy by : GroupBy.values()) {
            if (isDue(Optional.ofNullable(marks.get(by)), present)) {
                due.put(by, particlesMax(by));
            }
        }
        if (due.isEmpty()) {
            access.sumsNotes(present).forEach((by, notes) -> {
                if (GroupNotes.areDisturbed(notes, present.sample(), by, added)) {
                    due.put(by, particlesMax(by));
                }
            });
        }
        if (due.isEmpty()) {
            return;
        }
        Map<GroupBy, SampleSums> made = answers.sums(access, present, access.spotSource(present), due);
        due.keySet().forEach(by -> access.keepSums(present, by, Optional.ofNullable(made.get(by))));
    }

    private static boolean isDue(Optional<SumsMark> mark, StoredSample present) {
        if (mark.isPresent() && !mark.get().hasSums()) {
            return false;
        }
        long later = present.spotCount() - mark.map(SumsMark::spotCount).orElse(0L);
        return later > Math.max(LATER_SPOTS_MAX, mark.map(SumsMark::particleCount).orElse(0));
    }
}
