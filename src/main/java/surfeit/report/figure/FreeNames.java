package surfeit.report.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds room for names beside points, clear of each other and of what is drawn already. For one picture. */
final class FreeNames {
    private static final double HEIGHT = 13;
    private static final Type TYPE = Type.SMALL;

    private final List<Box> taken = new ArrayList<>();

    /** A name in its place; x, y of its baseline. */
    record Name(String text, double x, double y, Box box) {
    }

    /** A rectangle by its edges. */
    record Box(double left, double top, double right, double bottom) {
        boolean meets(Box other) {
            return left < other.right && right > other.left && top < other.bottom && bottom > other.top;
        }
    }

    /** Something to stay clear of, so far around a point. */
    void take(double x, double y, double around) {
        taken.add(new Box(x - around, y - around, x + around, y + around));
    }

    /** A place for a name beside a point, or none where all are taken; it is not taken by asking. */
    Optional<Name> place(double x, double y, String text, double away, List<Name> others) {
        double width = TextWidth.of(text, TYPE);
        double before = x - away - width;
        double around = x - width / 2;
        double[][] places = {{x + away, y + 4}, {x + away, y - away}, {x + away, y + away + 8}, {before, y + 4},
            {before, y - away}, {before, y + away + 8}, {around, y - away - 2}, {around, y + away + 10}};
        for (double[] place : places) {
            Box box = new Box(place[0], place[1] - HEIGHT + 3, place[0] + width, place[1] + 3);
            if (taken.stream().noneMatch(box::meets) && others.stream().noneMatch(other -> box.meets(other.box()))) {
                return Optional.of(new Name(text, place[0], place[1], box));
            }
        }
        return Optional.empty();
    }

    /** Draws a name and keeps its place. */
    void draw(Name name, Drawing drawing) {
        taken.add(name.box());
        drawing.text(name.x(), name.y(), name.text(), TYPE);
    }
}
