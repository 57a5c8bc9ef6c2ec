package surfeit.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How figures grow: as rows and as a drawing with both axes in powers of ten, under {@code target/bench}. */
final class Curves {
    private static final Path FOLDER = Path.of("target", "bench");
    private static final double WIDTH = 640;
    private static final double HEIGHT = 420;
    private static final double LEFT = 70;
    private static final double RIGHT = 180;
    private static final double TOP = 50;
    private static final double BOTTOM = 50;
    private static final List<String> DASHES = List.of("", "7 4", "2 3", "9 3 2 3");

    private final String name;
    private final String title;
    private final String across;
    private final String up;
    private final List<String> series;
    private final List<double[]> points = new ArrayList<>();

    /** @param series what each figure of a point is called */
    Curves(String name, String title, String across, String up, List<String> series) {
        this.name = name;
        this.title = title;
        this.across = across;
        this.up = up;
        this.series = series;
    }

    void add(double x, double... figures) {
        double[] point = new double[figures.length + 1];
        point[0] = x;
        System.arraycopy(figures, 0, point, 1, figures.length);
        points.add(point);
        StringBuilder line = new StringBuilder("bench: " + title + ": " + InTurns.digits(x) + " " + across);
        for (int i = 0; i < figures.length; i++) {
            line.append(", ").append(series.get(i)).append(' ').append(InTurns.digits(figures[i])).append(' ').append(up);
        }
        System.out.println(line);
    }

    void write() throws IOException {
        Files.createDirectories(FOLDER);
        StringBuilder csv = new StringBuilder(across.replace(' ', '_'));
        series.forEach(each -> csv.append(',').append(each.replace(' ', '_')).append('_').append(up.replace("/", "_per_")));
        for (double[] point : points) {
            csv.append('\n').append((long) point[0]);
            for (int i = 1; i < point.length; i++) {
                csv.append(',').append(point[i]);
            }
        }
        Files.writeString(FOLDER.resolve(name + ".csv"), csv.append('\n'));
        Files.writeString(FOLDER.resolve(name + ".svg"), drawing());
    }

    private String drawing() {
        double[] xs = points.stream().mapToDouble(point -> point[0]).toArray();
        double[] ys = points.stream().flatMapToDouble(point -> java.util.Arrays.stream(point, 1, point.length)).toArray();
        Axis x = Axis.over(xs, LEFT, WIDTH - RIGHT);
        Axis y = Axis.over(ys, HEIGHT - BOTTOM, TOP);
        StringBuilder svg = new StringBuilder(String.format(Locale.ROOT, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 "
            + "%.0f %.0f\" font-family=\"sans-serif\" font-size=\"11\" fill=\"#222222\"><title>%s</title>\n<rect width=\"100%%\" "
            + "height=\"100%%\" fill=\"white\"/>\n<text x=\"%.0f\" y=\"24\" font-size=\"14\">%s</text>\n", WIDTH, HEIGHT, title,
            LEFT, title));
        for (int power = x.from; power <= x.to; power++) {
            svg.append(line(x.at(Math.pow(10, power)), TOP, x.at(Math.pow(10, power)), HEIGHT - BOTTOM, "#e4e4e4", ""))
                .append(text(x.at(Math.pow(10, power)), HEIGHT - BOTTOM + 16, "middle", "1e" + power));
        }
        for (int power = y.from; power <= y.to; power++) {
            svg.append(line(LEFT, y.at(Math.pow(10, power)), WIDTH - RIGHT, y.at(Math.pow(10, power)), "#e4e4e4", ""))
                .append(text(LEFT - 6, y.at(Math.pow(10, power)) + 4, "end", "1e" + power));
        }
        svg.append(text((LEFT + WIDTH - RIGHT) / 2, HEIGHT - 12, "middle", across))
            .append(text(LEFT - 40, TOP - 10, "start", up));
        for (int i = 0; i < series.size(); i++) {
            svg.append(curve(i + 1, x, y));
        }
        return svg.append("</svg>\n").toString();
    }

    private String curve(int column, Axis x, Axis y) {
        StringBuilder curve = new StringBuilder();
        double[] before = points.get(0);
        for (double[] point : points) {
            curve.append(line(x.at(before[0]), y.at(before[column]), x.at(point[0]), y.at(point[column]), "#222222",
                DASHES.get((column - 1) % DASHES.size())));
            before = point;
        }
        return curve.append(text(x.at(before[0]) + 8, y.at(before[column]) + 4, "start", series.get(column - 1))).toString();
    }

    private static String line(double x1, double y1, double x2, double y2, String colour, String dashes) {
        return String.format(Locale.ROOT, "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"%s\" "
            + "stroke-dasharray=\"%s\"/>\n", x1, y1, x2, y2, colour, dashes);
    }

    private static String text(double x, double y, String anchor, String words) {
        return String.format(Locale.ROOT, "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">%s</text>\n", x, y, anchor, words);
    }

    /** Powers of ten along a length in pixels. */
    private record Axis(int from, int to, double begin, double end) {
        static Axis over(double[] values, double begin, double end) {
            double low = java.util.Arrays.stream(values).min().orElse(1);
            double high = java.util.Arrays.stream(values).max().orElse(1);
            int from = (int) Math.floor(Math.log10(low));
            return new Axis(from, Math.max(from + 1, (int) Math.ceil(Math.log10(high))), begin, end);
        }

        double at(double value) {
            return begin + (Math.log10(value) - from) / (to - from) * (end - begin);
        }
    }
}
