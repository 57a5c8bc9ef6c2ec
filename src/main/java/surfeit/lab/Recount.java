package surfeit.lab;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import surfeit.composition.AlloyCatalogue;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.GrowingSums;
import surfeit.segregation.blocks.KeptSums;
import surfeit.segregation.blocks.SampleSums;
import surfeit.segregation.blocks.SpotPlaces;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Spot;

/**
 * Sums up the spots of samples anew and compares every sum that is kept of them. It changes nothing unless told to.
 * Thread-safe.
 */
public final class Recount {
    private static final int SAMPLES_AT_ONCE = 200;

    private final Answers answers;

    /** @param detectionLimitMassFraction limit taken for "not detected" without a stated one, as the service has it */
    public Recount(AlloyCatalogue packagedAlloys, double detectionLimitMassFraction) {
        this.answers = new Answers(new Alloys(packagedAlloys), new Interpreter(), detectionLimitMassFraction);
    }

    /** Hands over what is found for one sample. @throws ProblemException not-found */
    public void of(ReadAccess access, String sample, Consumer<Recounted> found) {
        recount(access, Lookups.sample(access, sample), found);
    }

    /** Hands over what is found for every sample, in the order of their names. */
    public void ofAll(ReadAccess access, Consumer<Recounted> found) {
        forEachSample(access, sample -> recount(access, sample, found));
    }

    /** Makes the sums of samples anew from their spots: of one, or of all. @throws ProblemException not-found */
    public void renew(Store store, Optional<String> sample) {
        List<String> names = new ArrayList<>();
        sample.ifPresentOrElse(names::add,
            () -> store.read(access -> forEachSample(access, stored -> names.add(stored.name()))));
        Sums sums = new Sums(answers);
        names.forEach(name -> store.write(access -> {
            StoredSample present = Lookups.sample(access, name);
            sums.renew(access, present);
            return present;
        }));
    }

    private static Optional<String> forEachSample(ReadAccess access, Consumer<StoredSample> consumer) {
        Optional<String> after = Optional.empty();
        List<StoredSample> samples;
        do {
            samples = access.samples(SampleFilter.ALL, after, SAMPLES_AT_ONCE);
            for (StoredSample sample : samples) {
                consumer.accept(sample);
                after = Optional.of(sample.name());
            }
        } while (samples.size() == SAMPLES_AT_ONCE);
        return after;
    }

    private void recount(ReadAccess access, StoredSample sample, Consumer<Recounted> found) {
        Map<GroupBy, SumsMark> marks = access.sumsMarks(sample);
        Map<GroupBy, Recounted> all = new EnumMap<>(GroupBy.class);
        Map<Long, Map<GroupBy, KeptSums>> inUse = new TreeMap<>();
        marks.forEach((by, mark) -> {
            if (!access.areSumsIntact(sample, by)) {
                all.put(by, without(sample, by, Recounted.State.DAMAGED));
            } else if (!mark.hasSums()) {
                all.put(by, without(sample, by, Recounted.State.NOT_KEPT));
            } else {
                inUse(access, sample, by, mark).ifPresentOrElse(
                    kept -> inUse.computeIfAbsent(mark.lastSpot(), last -> new EnumMap<>(GroupBy.class)).put(by, kept),
                    () -> all.put(by, without(sample, by, Recounted.State.UNUSED)));
            }
        });
        inUse.forEach((last, kept) -> GrowingSums.recount(answers.summedBy(access, sample),
            access.spotSource(sample, marks.get(kept.keySet().iterator().next())), kept).forEach((by, counted) ->
                all.put(by, new Recounted(sample.name(), by, counted.comparison().difference().isEmpty()
                    ? Recounted.State.EQUAL : Recounted.State.DIFFERENT, counted.spotCount(),
                    counted.comparison().compared(), counted.comparison().difference()))));
        all.values().forEach(found);
    }

    private static Recounted without(StoredSample sample, GroupBy by, Recounted.State state) {
        return new Recounted(sample.name(), by, state, 0, 0, Optional.empty());
    }

    /** The sums kept, where an answer would go on from them: it need not read a spot to see that. */
    private Optional<KeptSums> inUse(ReadAccess access, StoredSample sample, GroupBy by, SumsMark mark) {
        SpotSource source = access.spotSource(sample, mark);
        Optional<KeptSums> kept = source.kept(by);
        boolean used = answers.sums(access, sample, new NoSpots(source, kept), Map.of(by, Integer.MAX_VALUE))
            .map(sums -> sums.get(by)).map(SampleSums::wentOn).orElse(false);
        return kept.filter(sums -> used);
    }

    /** A source with sums and no spots: none comes after those in the sums. */
    private record NoSpots(SpotSource source, Optional<KeptSums> sums) implements SpotSource {
        @Override
        public List<Spot> references() {
            return source.references();
        }

        @Override
        public void forEachPlace(SpotPlaces places) {
            // none
        }

        @Override
        public int placesInBlock() {
            return source.placesInBlock();
        }

        @Override
        public Optional<KeptSums> kept(GroupBy by) {
            return sums;
        }
    }
}
