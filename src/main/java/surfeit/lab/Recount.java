package surfeit.lab;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import surfeit.composition.AlloyCatalogue;
import surfeit.segregation.GroupBy;
import surfeit.segregation.Interpreter;
import surfeit.segregation.KeptSums;
import surfeit.segregation.SampleSums;
import surfeit.segregation.SpotSource;
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
        access.sumsMarks(sample).forEach((by, mark) -> found.accept(recount(access, sample, by, mark)));
    }

    private Recounted recount(ReadAccess access, StoredSample sample, GroupBy by, SumsMark mark) {
        if (!access.areSumsIntact(sample, by)) {
            return new Recounted(sample.name(), by, Recounted.State.DAMAGED, 0, 0, Optional.empty());
        }
        if (!mark.hasSums()) {
            return new Recounted(sample.name(), by, Recounted.State.NOT_KEPT, 0, 0, Optional.empty());
        }
        SpotSource source = access.spotSource(sample, mark);
        Optional<KeptSums> kept = source.kept(by);
        Map<GroupBy, Integer> only = Map.of(by, Integer.MAX_VALUE);
        Optional<SampleSums> used = Optional.ofNullable(answers.sums(access, sample, source, only).get(by));
        if (kept.isEmpty() || !used.map(SampleSums::wentOn).orElse(false)) {
            return new Recounted(sample.name(), by, Recounted.State.UNUSED, 0, 0, Optional.empty());
        }
        SampleSums counted = answers.sums(access, sample, withoutSums(source), only).get(by);
        SampleSums.Comparison comparison = counted.comparedWith(kept.orElseThrow().bytes());
        return new Recounted(sample.name(), by,
            comparison.difference().isEmpty() ? Recounted.State.EQUAL : Recounted.State.DIFFERENT,
            counted.spotCount(), comparison.compared(), comparison.difference());
    }

    private static SpotSource withoutSums(SpotSource source) {
        return new SpotSource() {
            @Override
            public List<Spot> references() {
                return source.references();
            }

            @Override
            public void forEachSpecimen(Consumer<Spot> consumer) {
                source.forEachSpecimen(consumer);
            }
        };
    }
}
