package surfeit.calibration;

import java.util.List;

/**
 * The program's answer for one invented sample.
 *
 * @param elements     per element (of every feature in turn)
 * @param moved        index of the element the truth was moved for
 * @param logOdds      how far it was moved
 * @param mirrored     true where two elements make one test, so that flags count once
 */
record Answer(List<Said> elements, int moved, double logOdds, boolean mirrored) {
    Said movedElement() {
        return elements.get(moved);
    }

    boolean isFlagged() {
        return elements.stream().anyMatch(said -> said.flag() != 0);
    }

    /** Highest confidence of a flag; 0 without one. */
    double highestConfidence() {
        return elements.stream().filter(said -> said.flag() != 0).mapToDouble(Said::confidence).max().orElse(0);
    }
}
