package surfeit.calibration;

import java.util.Set;

/**
 * One way of making invented samples; the benchmark asks it for many.
 *
 * <p>A new kind of answer joins the benchmark as a class that invents its samples, lets the program interpret them and
 * tells what was said beside the truth; its cells are listed in {@link Cells#all}.
 */
interface Cell {
    Label label();

    /** The truths worth simulating for this cell. */
    Set<Truth> truths();

    /** One invented sample, and what the program said of it. */
    Answer draw(Truth truth, Dice dice);
}
