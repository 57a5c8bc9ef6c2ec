package surfeit.report.figure;

import java.util.ArrayList;
import java.util.List;

/** What the signs of a figure mean, in the order they were added; set in lines below it. Not thread-safe. */
final class Legend {
    private static final double SAMPLE = 26;
    private static final double GAP = 18;
    private static final double LINE_HEIGHT = 19;
    private static final Type TYPE = Type.SMALL.in(Ink.TEXT);

    private final List<Item> items = new ArrayList<>();

    /** Draws a sample of a sign into the space from x to x + 22, centred at y. */
    interface Sample {
        void draw(double x, double y, Drawing drawing);
    }

    private record Item(Sample sample, String meaning) {
        double width() {
            return SAMPLE + TextWidth.of(meaning, TYPE);
        }
    }

    Legend add(String meaning, Sample sample) {
        items.add(new Item(sample, meaning));
        return this;
    }

    Legend add(Mark mark, String meaning) {
        return add(meaning, (x, y, drawing) -> mark.draw(x + 11, y, Mark.SIZE, drawing));
    }

    Legend add(Drawing.Stroke stroke, String meaning) {
        return add(meaning, (x, y, drawing) -> drawing.horizontal(x, x + 22, y, stroke));
    }

    boolean isEmpty() {
        return items.isEmpty();
    }

    /** Draws the lines from the given height on and tells where they end. */
    double draw(double left, double right, double top, Drawing drawing) {
        double x = left;
        double y = top;
        for (Item item : items) {
            if (x > left && x + item.width() > right) {
                x = left;
                y += LINE_HEIGHT;
            }
            item.sample.draw(x, y + LINE_HEIGHT / 2, drawing);
            drawing.fitted(x + SAMPLE, y + LINE_HEIGHT / 2 + 4, item.meaning, TYPE, right - x - SAMPLE);
            x += item.width() + GAP;
        }
        return y + LINE_HEIGHT;
    }
}
