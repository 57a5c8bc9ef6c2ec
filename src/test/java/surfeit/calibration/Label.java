package surfeit.calibration;

import java.util.Locale;

/**
 * What a cell is called and what was promised for it.
 *
 * @param block     part of the benchmark
 * @param particles particles, or particles on both sides as {@code 5+5}
 * @param spots     spots per particle
 * @param scatter   how particles and spots scatter
 * @param error     calibration error, and what reference spots or another session do to it
 * @param note      what is special; may be empty
 */
record Label(String block, String particles, int spots, int elements, Scatter scatter, String error, String note,
             Promise promise) {

    /** Whether the targets hold for a cell. */
    enum Promise {
        /** Three or more particles, symmetric scatter, assumptions as stated: every target. */
        FULL("promised"),
        /** One or two particles: flags and "consistent" are held to their targets, coverage is printed. */
        FEW("few particles"),
        /** An assumption is broken on purpose: figures are printed, nothing is promised. */
        OUTSIDE("outside the promise");

        private final String words;

        Promise(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    /** The words of the seed: as long as they stay, so do the cell's samples. */
    String key() {
        return String.join("|", block, particles, Integer.toString(spots), Integer.toString(elements), scatter.word(),
            error, note);
    }

    /** The design in a few words: {@code 3 x 2 spots, 4 elements, normal}. */
    String design() {
        return String.format(Locale.ROOT, "%s x %d, %d el., %s", particles, spots, elements, scatter.word());
    }

    String circumstances() {
        return note.isEmpty() ? error : error + ", " + note;
    }
}
