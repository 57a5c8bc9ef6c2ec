package surfeit.report.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.report.figure.Drawing.Stroke;

/**
 * Ratios with their intervals, one below the other on a logarithmic axis around one, with the margin drawn behind each
 * and numbers and verdict in words beside it.
 */
final class ForestPlot {
    private static final double ROW = 20;
    private static final double HEADER = 23;
    private static final double GAP = 7;
    private static final double INDENT = 14;
    private static final double COLUMN_GAP = 16;
    private static final double LEAST_PLOT = 200;
    /** An end further out than this from the nearest value is not shown to scale. Judgement. */
    private static final double FARTHEST = 3;
    private static final double PAD = 1.06;
    /** Ratios below this, and above its inverse, are not drawn to scale. Judgement. */
    private static final double SMALLEST = 1e-4;
    /** The axis shows at least this factor to both sides. Judgement. */
    private static final double NEAREST = 1.6;
    /** Width of the line of an inner interval. */
    static final double INNER = 4;
    private static final String LESS = "\u2190 less";
    private static final String MORE = "more \u2192";
    /** Rows from which on the axis is written at the top too. */
    private static final int LONG = 18;

    private final List<Block> blocks;
    private final String valueName;
    private final String asideName;
    private final String numbersName;
    private final LogScale scale;
    private final double asideAt;
    private final double numbersAt;
    private final double wordAt;

    /** A group: its name, how many were measured, and its rows. */
    record Block(String name, String counts, List<Row> rows) {
    }

    /**
     * One row.
     *
     * @param label   what it is about: an element
     * @param aside   a number beside it, with unit
     * @param bar     what is drawn; empty where there is no ratio
     * @param mark    the sign of the verdict
     * @param numbers ratio and interval in figures
     * @param word    the verdict in words
     * @param weak    true to draw the interval dashed
     */
    record Row(String label, String aside, Optional<Bar> bar, Mark mark, String numbers, String word, boolean weak) {
        Row {
            bar = bar.filter(Bar::isKnown);
        }
    }

    /**
     * A ratio with its interval and margin. Ends of 0 and infinity are without bound; a value of 0 has no sign.
     *
     * @param inner a narrower interval to be drawn thick on the same line, if any
     */
    record Bar(double value, double low, double high, double marginLow, double marginHigh, Optional<Inner> inner) {
        boolean isKnown() {
            return !Double.isNaN(value) && !Double.isNaN(low) && !Double.isNaN(high);
        }
    }

    /** An interval inside another: for the measured particles themselves. */
    record Inner(double low, double high) {
    }

    /**
     * A plot of these groups.
     *
     * @param valueName   what the ratios are, with unit, for the axis
     * @param asideName   what the numbers beside the labels are, with unit
     * @param numbersName what the ratios are, in short, for the column of figures
     */
    ForestPlot(List<Block> blocks, String valueName, String asideName, String numbersName) {
        this.blocks = blocks;
        this.valueName = valueName;
        this.asideName = asideName;
        this.numbersName = numbersName;
        double label = Sheet.LEFT + INDENT + widest(blocks, Row::label, Type.BODY.strong(), "", 120);
        asideAt = label + 10;
        double plotFrom = asideAt + widest(blocks, Row::aside, Type.SMALL, asideName, 150) + COLUMN_GAP;
        double wordWidth = 16 + widest(blocks, Row::word, Type.BODY, "verdict", 210);
        wordAt = Sheet.RIGHT - wordWidth;
        numbersAt = wordAt - COLUMN_GAP - widest(blocks, Row::numbers, Type.BODY, numbersName, 190);
        scale = scale(blocks, plotFrom, Math.max(plotFrom + LEAST_PLOT, numbersAt - COLUMN_GAP));
    }

    private ForestPlot(ForestPlot whole, List<Block> blocks) {
        this.blocks = blocks;
        valueName = whole.valueName;
        asideName = whole.asideName;
        numbersName = whole.numbersName;
        scale = whole.scale;
        asideAt = whole.asideAt;
        numbersAt = whole.numbersAt;
        wordAt = whole.wordAt;
    }

    /** The same in plots that each fit a printed page, all on one axis. */
    List<ForestPlot> pages() {
        List<ForestPlot> pages = new ArrayList<>();
        List<Block> page = new ArrayList<>();
        double height = 0;
        for (Block block : blocks) {
            double more = HEADER + block.rows().size() * ROW + GAP;
            if (!page.isEmpty() && height + more > Sheet.PAGE) {
                pages.add(new ForestPlot(this, List.copyOf(page)));
                page.clear();
                height = 0;
            }
            page.add(block);
            height += more;
        }
        pages.add(new ForestPlot(this, List.copyOf(page)));
        return pages;
    }

    private interface Cell {
        String of(Row row);
    }

    private static double widest(List<Block> blocks, Cell cell, Type type, String heading, double most) {
        double widest = TextWidth.of(heading, Type.SMALL);
        for (Block block : blocks) {
            for (Row row : block.rows()) {
                widest = Math.max(widest, TextWidth.of(cell.of(row), type));
            }
        }
        return Math.min(widest, most);
    }

    private static LogScale scale(List<Block> blocks, double from, double to) {
        double low = 1 / NEAREST;
        double high = NEAREST;
        List<Bar> bars = blocks.stream().flatMap(block -> block.rows().stream()).flatMap(row -> row.bar().stream())
            .toList();
        for (Bar bar : bars) {
            low = Math.min(low, Math.max(SMALLEST, bar.value() > 0 ? bar.value() : bar.high()));
            high = Math.max(high, Math.min(1 / SMALLEST, bar.value()));
        }
        double lowest = low;
        double highest = high;
        for (Bar bar : bars) {
            lowest = bar.low() > 0 ? Math.min(lowest, bar.low()) : lowest;
            highest = Double.isFinite(bar.high()) ? Math.max(highest, bar.high()) : highest;
        }
        return new LogScale(Math.max(lowest, low / FARTHEST) / PAD, Math.min(highest, high * FARTHEST) * PAD, from, to);
    }

    /** Draws everything from the given height on and tells where it ends. */
    double draw(double top, Drawing drawing) {
        double y = top + 12;
        drawing.text(asideAt, y, asideName, Type.SMALL);
        double least = asideAt + TextWidth.of(asideName + LESS, Type.SMALL) + COLUMN_GAP + 6;
        double most = numbersAt - TextWidth.of(MORE, Type.SMALL) - COLUMN_GAP - 6;
        double sides = Math.max(least, Math.min(scale.at(1), most));
        drawing.text(sides - 6, y, LESS, Type.SMALL.end());
        drawing.text(sides + 6, y, MORE, Type.SMALL);
        drawing.text(numbersAt, y, numbersName, Type.SMALL);
        drawing.text(wordAt, y, "verdict", Type.SMALL);
        int rows = blocks.stream().mapToInt(block -> block.rows().size()).sum();
        if (rows > LONG) {
            y += 17;
            ticks(y, drawing);
        }
        y += 6;
        for (Block block : blocks) {
            y = block(block, y, drawing) + GAP;
        }
        drawing.horizontal(scale.from(), scale.to(), y, Stroke.of(Ink.TEXT, 1));
        for (Tick tick : scale.ticks()) {
            drawing.vertical(scale.at(tick.value()), y, y + 4, Stroke.of(Ink.TEXT, 1));
        }
        ticks(y + 17, drawing);
        drawing.text((scale.from() + scale.to()) / 2, y + 34, valueName, Type.BODY.middle());
        return y + 42;
    }

    private void ticks(double y, Drawing drawing) {
        for (Tick tick : scale.ticks()) {
            drawing.text(scale.at(tick.value()), y, tick.label(), Type.SMALL.in(Ink.TEXT).middle());
        }
    }

    private double block(Block block, double top, Drawing drawing) {
        double baseline = top + HEADER - 7;
        double room = Sheet.RIGHT - Sheet.LEFT;
        double counts = TextWidth.of(block.counts(), Type.SMALL);
        drawing.horizontal(Sheet.LEFT, Sheet.RIGHT, top + 1, Stroke.of(Ink.RULE, 0.7));
        drawing.fitted(Sheet.LEFT, baseline, block.name(), Type.BODY.strong(), room - Math.min(counts, room / 2) - 12);
        drawing.fitted(Sheet.RIGHT, baseline, block.counts(), Type.SMALL.end(), room / 2);
        double y = top + HEADER;
        double bottom = y + block.rows().size() * ROW;
        for (int i = 0; i < block.rows().size(); i++) {
            block.rows().get(i).bar().ifPresent(margin(y + i * ROW, drawing)::draw);
        }
        if (!block.rows().isEmpty()) {
            for (Tick tick : scale.ticks()) {
                drawing.vertical(scale.at(tick.value()), y, bottom, Stroke.of(Ink.RULE, 0.7));
            }
            drawing.vertical(scale.at(1), y, bottom, Stroke.of(Ink.TEXT, 1.1));
        }
        for (Row row : block.rows()) {
            row(row, block.name(), y + ROW / 2, drawing);
            y += ROW;
        }
        return bottom;
    }

    private interface BarPart {
        void draw(Bar bar);
    }

    private BarPart margin(double top, Drawing drawing) {
        return bar -> {
            double from = scale.within(bar.marginLow());
            drawing.rectangle(from, top, scale.within(bar.marginHigh()) - from, ROW, Ink.BAND);
        };
    }

    private void row(Row row, String group, double y, Drawing drawing) {
        drawing.open(group + ": " + row.label() + " " + row.word() + ", " + row.numbers());
        drawing.fitted(Sheet.LEFT + INDENT, y + 4.5, row.label(), Type.BODY.strong(),
            asideAt - Sheet.LEFT - INDENT - 6);
        drawing.fitted(asideAt, y + 4.5, row.aside(), Type.SMALL, scale.from() - asideAt - 6);
        row.bar().ifPresent(bar -> bar(bar, row, y, drawing));
        drawing.fitted(numbersAt, y + 4.5, row.numbers(), Type.BODY, wordAt - numbersAt - 8);
        row.mark().draw(wordAt + 5, y, Mark.SIZE, drawing);
        drawing.fitted(wordAt + 16, y + 4.5, row.word(), Type.BODY.in(row.mark().ink()), Sheet.RIGHT - wordAt - 16);
        drawing.close();
    }

    private void bar(Bar bar, Row row, double y, Drawing drawing) {
        Stroke stroke = Stroke.of(row.mark().ink(), 1.6);
        double from = scale.within(bar.low());
        double to = scale.within(bar.high());
        drawing.horizontal(from, to, y, row.weak() ? stroke.dashed("4 3") : stroke);
        bar.inner().ifPresent(inner -> drawing.horizontal(scale.within(inner.low()), scale.within(inner.high()), y,
            Stroke.of(row.mark().ink(), INNER)));
        end(bar.low(), from, y, stroke, drawing);
        end(bar.high(), to, y, stroke, drawing);
        if (bar.value() > 0 && scale.holds(bar.value())) {
            row.mark().draw(scale.at(bar.value()), y, Mark.SIZE, drawing);
        }
    }

    /** A stroke across where the interval ends, an arrow where it goes on beyond the axis or has no bound. */
    private void end(double value, double x, double y, Stroke stroke, Drawing drawing) {
        if (scale.holds(value)) {
            drawing.vertical(x, y - 3.5, y + 3.5, stroke.dashed(""));
        } else {
            arrow(x, value < scale.low() ? -1 : 1, y, stroke.ink(), drawing);
        }
    }

    /** An arrow head that ends at x and points to the left (-1) or right (1). */
    static void arrow(double x, int direction, double y, Ink ink, Drawing drawing) {
        drawing.polygon(ink, ink, x, y, x - direction * 8, y - 4, x - direction * 8, y + 4);
    }

    /** Every row in words. */
    String inWords(int most) {
        List<String> sentences = new ArrayList<>();
        for (Block block : blocks) {
            List<String> parts = block.rows().stream()
                .map(row -> row.label() + " " + row.word() + (row.numbers().isBlank() ? "" : ", " + row.numbers()))
                .toList();
            sentences.add(block.name() + " (" + block.counts() + "): " + String.join("; ", parts) + ".");
        }
        String more = sentences.size() > most ? " And " + (sentences.size() - most) + " more." : "";
        return String.join(" ", sentences.subList(0, Math.min(most, sentences.size()))) + more;
    }

    /** True where an interval is shown with an arrow. */
    boolean hasOpenEnds() {
        return blocks.stream().flatMap(block -> block.rows().stream()).flatMap(row -> row.bar().stream())
            .anyMatch(bar -> !scale.holds(bar.low()) || !scale.holds(bar.high()));
    }

    /** True where a narrower interval is drawn too. */
    boolean hasInner() {
        return blocks.stream().flatMap(block -> block.rows().stream()).flatMap(row -> row.bar().stream())
            .anyMatch(bar -> bar.inner().isPresent());
    }

    /** The signs used, each once, in their own order. */
    List<Mark> marks() {
        return blocks.stream().flatMap(block -> block.rows().stream()).map(Row::mark).distinct().sorted().toList();
    }
}
