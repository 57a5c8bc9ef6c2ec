package surfeit.report.figure;

import java.util.List;
import surfeit.report.VisibleText;

/** The sheet a figure is drawn on: title and subtitle at the top, legend and notes at the bottom. For one figure. */
final class Sheet {
    /** Fits the width of an A4 page between usual margins at four fifths, with letters of 7 points and more. */
    static final int WIDTH = 800;
    static final double LEFT = 16;
    static final double RIGHT = WIDTH - LEFT;
    /** Height of groups that a printed page takes beside axis, legend and notes. Judgement: 215 mm of A4 at four fifths. */
    static final double PAGE = 760;
    private static final double NOTE_LINE = 15.5;
    private static final double BASELINE = 26;

    private final Drawing drawing = new Drawing();
    private final String title;
    private final String subtitle;
    private final double top;

    Sheet(String title, String subtitle) {
        this.title = VisibleText.line(title);
        this.subtitle = VisibleText.line(subtitle);
        drawing.fitted(LEFT, BASELINE, title, Type.TITLE, RIGHT - LEFT);
        double y = BASELINE;
        for (String line : TextWidth.wrapped(subtitle, Type.BODY, RIGHT - LEFT)) {
            y += 18;
            drawing.fitted(LEFT, y, line, Type.BODY.in(Ink.MUTED), RIGHT - LEFT);
        }
        top = y + 14;
    }

    /** The title of one of several sheets: the title itself, with which of how many it is where they are several. */
    static String pageTitle(String title, int page, int pages) {
        return pages == 1 ? title : title + " (" + (page + 1) + " of " + pages + ")";
    }

    Drawing drawing() {
        return drawing;
    }

    /** Where the picture begins. */
    double top() {
        return top;
    }

    /** Ends the sheet below the picture. */
    Figure finish(double bottom, Legend legend, List<String> notes, String description) {
        double y = bottom;
        if (!legend.isEmpty()) {
            y = legend.draw(LEFT, RIGHT, y + 6, drawing);
        }
        y += notes.isEmpty() ? 0 : 4;
        for (String note : notes) {
            for (String line : TextWidth.wrapped(note, Type.SMALL, RIGHT - LEFT)) {
                y += NOTE_LINE;
                drawing.fitted(LEFT, y, line, Type.SMALL, RIGHT - LEFT);
            }
        }
        return new Figure(title, subtitle, description, WIDTH, (int) Math.ceil(y + 14), (int) Math.floor(top - 4),
            drawing.elements());
    }
}
