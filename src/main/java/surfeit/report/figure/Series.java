package surfeit.report.figure;

import surfeit.report.figure.Drawing.Stroke;

/**
 * The sign and the dashes of the n-th of several things in one picture, told apart without colour: eight shapes, none
 * of them a triangle (those stand for verdicts), then letters.
 */
record Series(int index) {
    private static final int SHAPES = 8;
    private static final String[] DASHES = {"", "7 3", "2 2.5", "10 3 2 3", "5 2 5 2 1.5 2", "14 4"};
    private static final double SIZE = 4.3;

    Stroke stroke() {
        return Stroke.of(Ink.TEXT, 1.5).dashed(DASHES[index % DASHES.length]);
    }

    void draw(double x, double y, Drawing drawing) {
        if (index >= SHAPES) {
            String letter = String.valueOf((char) ('a' + (index - SHAPES) % 26));
            drawing.circle(x, y, SIZE * 1.5, Ink.PAPER, Ink.PAPER);
            drawing.text(x, y + 4, letter, Type.SMALL.in(Ink.TEXT).strong().middle());
            return;
        }
        Ink fill = index % 2 == 0 ? Ink.TEXT : Ink.PAPER;
        Ink outline = index % 2 == 0 ? Ink.PAPER : Ink.TEXT;
        switch (index / 2) {
            case 0 -> drawing.circle(x, y, SIZE * 0.9, fill, outline);
            case 1 -> drawing.polygon(fill, outline, x - SIZE * 0.85, y - SIZE * 0.85, x + SIZE * 0.85, y - SIZE * 0.85,
                x + SIZE * 0.85, y + SIZE * 0.85, x - SIZE * 0.85, y + SIZE * 0.85);
            case 2 -> drawing.polygon(fill, outline, x, y - SIZE * 1.25, x + SIZE * 1.1, y, x, y + SIZE * 1.25,
                x - SIZE * 1.1, y);
            default -> cross(x, y, index % 2 == 0, drawing);
        }
    }

    private static void cross(double x, double y, boolean upright, Drawing drawing) {
        Stroke stroke = Stroke.of(Ink.TEXT, 1.7);
        double reach = upright ? SIZE * 1.2 : SIZE * 0.9;
        double other = upright ? 0 : reach;
        drawing.line(x - reach, y - other, x + reach, y + other, stroke);
        drawing.line(x - other, y + reach, x + other, y - reach, stroke);
    }
}
