package surfeit.segregation.blocks;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import surfeit.segregation.sums.SumsBytes;
import surfeit.segregation.sums.SumsOut;

/** Is told the sums of every full block by itself, before they are put to those of the blocks in front of it. */
interface BlockSums {
    /** For an answer, which needs them together only. */
    BlockSums UNUSED = new BlockSums() {
        @Override
        public void full(int number, long lastPlace, Consumer<SumsOut> sums) {
            // nobody asks for them
        }

        @Override
        public void again() {
            // nothing was noted
        }
    };

    /**
     * A block is full.
     *
     * @param number    which one, counted from 1
     * @param lastPlace place of its last spot
     * @param sums      writes them
     */
    void full(int number, long lastPlace, Consumer<SumsOut> sums);

    /** Those told so far were of no use; they come again. */
    void again();

    /** Holds them, to be kept. */
    final class Held implements BlockSums {
        private final List<SumsBlock> blocks = new ArrayList<>();

        @Override
        public void full(int number, long lastPlace, Consumer<SumsOut> sums) {
            SumsBytes bytes = new SumsBytes();
            sums.accept(bytes);
            blocks.add(new SumsBlock(number, lastPlace, bytes.toBytes()));
        }

        @Override
        public void again() {
            blocks.clear();
        }

        List<SumsBlock> blocks() {
            return List.copyOf(blocks);
        }
    }

    /** Compares them with those kept. */
    final class Compared implements BlockSums {
        private final List<KeptSums.Block> kept;
        private long compared;
        private Optional<String> difference = Optional.empty();

        Compared(List<KeptSums.Block> kept) {
            this.kept = kept;
        }

        @Override
        public void full(int number, long lastPlace, Consumer<SumsOut> sums) {
            if (number > kept.size() || difference.isPresent()) {
                return;
            }
            SampleSums.Comparison comparison = SampleSums.compared(kept.get(number - 1).bytes(), sums);
            compared += comparison.compared();
            difference = comparison.difference().map(what -> "in block " + number + ", " + what);
            if (difference.isEmpty() && lastPlace != kept.get(number - 1).lastPlace()) {
                difference = Optional.of("block " + number + " is kept as ending with spot "
                    + kept.get(number - 1).lastPlace() + ", recounted as ending with spot " + lastPlace);
            }
        }

        @Override
        public void again() {
            compared = 0;
            difference = Optional.empty();
        }

        SampleSums.Comparison comparison() {
            return new SampleSums.Comparison(compared, difference);
        }
    }
}
