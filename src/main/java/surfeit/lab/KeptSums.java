package surfeit.lab;

import java.util.List;
import java.util.Optional;

/** The sums a lab keeps of its samples beside their spots, so that an answer need not read them all. Thread-safe. */
public final class KeptSums {
    private static final int SAMPLES_AT_ONCE = 500;

    private final Store store;
    private final Sums sums;

    KeptSums(Store store, Sums sums) {
        this.store = store;
        this.sums = sums;
    }

    /** Makes them anew from the spots: of one sample, or of all. @throws ProblemException not-found */
    public void renew(Optional<String> sample) {
        if (sample.isPresent()) {
            renew(sample.get());
            return;
        }
        Optional<String> after = Optional.empty();
        do {
            PageRequest request = new PageRequest(SAMPLES_AT_ONCE, after);
            List<StoredSample> found = store.read(access -> access.samples(SampleFilter.ALL, request.after(), request.size()));
            found.forEach(stored -> renew(stored.name()));
            after = found.size() < request.size() ? Optional.empty() : Optional.of(found.get(found.size() - 1).name());
        } while (after.isPresent());
    }

    private void renew(String name) {
        store.write(access -> {
            StoredSample present = Lookups.sample(access, name);
            sums.inputsChanged(access, present);
            return present;
        });
    }
}
