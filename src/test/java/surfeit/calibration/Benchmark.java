package surfeit.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Runs cells in batches over all processors; every batch has its own seed, so that thread order changes nothing.
 *
 * @param samples how many samples per truth
 */
record Benchmark(Map<Truth, Integer> samples) {
    /** About four minutes on two processors. */
    static final Benchmark FULL = new Benchmark(Map.of(Truth.NOMINAL, 10_000, Truth.MARGIN, 8_000, Truth.SHIFTED, 2_000,
        Truth.OWN, 10_000, Truth.ANY, 16_000));
    private static final int BATCH = 250;
    private static final int SECOND_LOOK = 4;
    /** Cells outside the promise are only shown, not judged: half the samples will do. */
    private static final int OUTSIDE_LESS = 2;

    private record Job(int cell, Truth truth, int batch, int size) {
    }

    /** Every cell once, and those that miss a target a second time with fresh seeds and more samples. */
    List<Result> run(List<Cell> cells) {
        List<Result> first = look(cells, 1, 1);
        List<Integer> missed = new ArrayList<>();
        for (int c = 0; c < cells.size(); c++) {
            if (!first.get(c).misses().isEmpty()) {
                missed.add(c);
            }
        }
        List<Result> second = look(missed.stream().map(cells::get).toList(), 2, SECOND_LOOK);
        List<Result> results = new ArrayList<>(first);
        for (int m = 0; m < missed.size(); m++) {
            results.set(missed.get(m), second.get(m));
        }
        return results;
    }

    /** How many samples, in words. */
    String describe() {
        return String.format(Locale.ROOT,
            "%d at nominal, %d at the margin, %d shifted, %d for reliability; half outside the promise",
            samples.get(Truth.NOMINAL), samples.get(Truth.MARGIN), samples.get(Truth.SHIFTED), samples.get(Truth.ANY));
    }

    /** One look at cells: {@code look} enters the seeds, {@code times} multiplies the samples. */
    List<Result> look(List<Cell> cells, int look, int times) {
        List<Job> jobs = new ArrayList<>();
        for (int c = 0; c < cells.size(); c++) {
            boolean outside = cells.get(c).label().promise() == Label.Promise.OUTSIDE;
            for (Truth truth : cells.get(c).truths()) {
                int left = samples.get(truth) * times / (outside ? OUTSIDE_LESS : 1);
                for (int batch = 0; left > 0; batch++, left -= BATCH) {
                    jobs.add(new Job(c, truth, batch, Math.min(BATCH, left)));
                }
            }
        }
        List<Tally> tallies = jobs.parallelStream().map(job -> tally(cells.get(job.cell), job, look)).toList();
        List<Tally> sums = new ArrayList<>();
        cells.forEach(cell -> sums.add(new Tally()));
        for (int j = 0; j < tallies.size(); j++) {
            sums.get(jobs.get(j).cell).plus(tallies.get(j));
        }
        List<Result> results = new ArrayList<>();
        for (int c = 0; c < cells.size(); c++) {
            results.add(new Result(cells.get(c).label(), sums.get(c), look));
        }
        return results;
    }

    private static Tally tally(Cell cell, Job job, int look) {
        Dice dice = Dice.of(String.join("|", cell.label().key(), job.truth.name(), Integer.toString(look),
            Integer.toString(job.batch)));
        Tally tally = new Tally();
        for (int i = 0; i < job.size; i++) {
            tally.add(job.truth, cell.draw(job.truth, dice));
        }
        return tally;
    }
}
