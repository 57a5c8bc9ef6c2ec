package surfeit.report.figure;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** A figure as a viewer finds it: read back from its SVG text, without knowing how it was drawn. */
final class Picture {
    private static final Set<String> ELEMENTS = Set.of("svg", "title", "desc", "style", "rect", "line", "polyline",
        "polygon",
        "circle", "text", "g");

    private final Element root;

    private Picture(Element root) {
        this.root = root;
    }

    /** Reads a figure; fails where it is no well-formed XML. */
    static Picture of(String svg) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            factory.setNamespaceAware(true);
            return new Picture(factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)))
                .getDocumentElement());
        } catch (Exception e) {
            throw new AssertionError("No well-formed XML: " + svg, e);
        }
    }

    /** What every figure must be: named for screen readers, without script, sufficient in itself, inside its frame. */
    Picture isProper() {
        assertThat(root.getAttribute("role")).isEqualTo("img");
        List<Element> all = all(element -> true);
        Element title = all.get(1);
        Element desc = all.get(2);
        assertThat(title.getTagName()).isEqualTo("title");
        assertThat(desc.getTagName()).isEqualTo("desc");
        assertThat(root.getAttribute("aria-labelledby"))
            .isEqualTo(title.getAttribute("id") + " " + desc.getAttribute("id"));
        assertThat(title.getTextContent()).isNotBlank();
        assertThat(desc.getTextContent()).isNotBlank();
        assertThat(all).allSatisfy(element -> {
            assertThat(ELEMENTS).contains(element.getTagName());
            NamedNodeMap attributes = element.getAttributes();
            for (int i = 0; i < attributes.getLength(); i++) {
                Node attribute = attributes.item(i);
                assertThat(attribute.getNodeName()).doesNotStartWith("on").doesNotContain("href").isNotEqualTo("style");
                assertThat(attribute.getNodeName().equals("xmlns") ? "" : attribute.getNodeValue())
                    .doesNotContain("url(", "://");
            }
        });
        assertThat(root.getTextContent()).doesNotContain("url(", "@import");
        staysInside();
        return this;
    }

    private void staysInside() {
        double[] frame = Arrays.stream(root.getAttribute("viewBox").split(" ")).mapToDouble(Double::parseDouble)
            .toArray();
        for (Element element : all(element -> true)) {
            for (String name : List.of("x", "x1", "x2", "cx")) {
                if (element.hasAttribute(name)) {
                    assertThat(number(element, name)).as(name).isBetween(0.0, frame[2]);
                }
            }
            for (String name : List.of("y", "y1", "y2", "cy")) {
                if (element.hasAttribute(name)) {
                    assertThat(number(element, name)).as(name).isBetween(0.0, frame[1] + frame[3]);
                }
            }
        }
    }

    String title() {
        return all(element -> element.getTagName().equals("title")).get(0).getTextContent();
    }

    String description() {
        return all(element -> element.getTagName().equals("desc")).get(0).getTextContent();
    }

    /** A text as it is shown: without what shows on pointing. */
    record Text(String shown, double x, double y, String anchor, double size) {
        /** About where it stands, for a face of usual width: left, right. */
        double[] span() {
            double width = shown.length() * size * 0.5;
            double left = anchor.equals("end") ? x - width : anchor.equals("middle") ? x - width / 2 : x;
            return new double[] {left, left + width};
        }
    }

    List<Text> texts() {
        List<Text> texts = new ArrayList<>();
        for (Element element : all(element -> element.getTagName().equals("text")
            && !element.hasAttribute("transform"))) {
            String whole = element.getTextContent();
            NodeList titles = element.getElementsByTagName("title");
            String shown = titles.getLength() == 0 ? whole : whole.substring(titles.item(0).getTextContent().length());
            texts.add(new Text(shown, number(element, "x"), number(element, "y"), element.getAttribute("text-anchor"),
                number(element, "font-size")));
        }
        return texts;
    }

    /** All texts that are shown, turned ones too. */
    String allText() {
        StringBuilder text = new StringBuilder();
        all(element -> element.getTagName().equals("text")).forEach(element -> text.append(element.getTextContent())
            .append('\n'));
        return text.toString();
    }

    Text text(String shown) {
        return texts().stream().filter(text -> text.shown().equals(shown)).findFirst()
            .orElseThrow(() -> new AssertionError("No text \"" + shown + "\" among " + texts()));
    }

    /** Where a value lies on a logarithmic axis whose marks at two values are written below it. */
    double onLogAxis(double value, String lowMark, String highMark) {
        double low = Double.parseDouble(lowMark);
        double share = Math.log(value / low) / Math.log(Double.parseDouble(highMark) / low);
        return between(mark(lowMark), mark(highMark), share);
    }

    /** The same on an axis of equal steps. */
    double onAxis(double value, String lowMark, String highMark) {
        double low = Double.parseDouble(lowMark);
        return between(mark(lowMark), mark(highMark), (value - low) / (Double.parseDouble(highMark) - low));
    }

    private double mark(String label) {
        return texts().stream().filter(text -> text.shown().equals(label) && text.anchor().equals("middle")).findFirst()
            .orElseThrow(() -> new AssertionError("No mark \"" + label + "\" among " + texts())).x();
    }

    /** The height of a mark of an axis upwards, which is written to the left of it. */
    double heightOf(String label) {
        return texts().stream().filter(text -> text.shown().equals(label) && text.anchor().equals("end")).findFirst()
            .orElseThrow(() -> new AssertionError("No mark \"" + label + "\" among " + texts())).y() - 4;
    }

    private static double between(double from, double to, double share) {
        return from + (to - from) * share;
    }

    /** Elements of a kind that carry a class. */
    List<Element> drawn(String tag, String styleClass) {
        return all(element -> element.getTagName().equals(tag)
            && List.of(element.getAttribute("class").split(" ")).contains(styleClass));
    }

    static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }

    /** The x and y of a polygon or line of points, one after the other. */
    static double[] points(Element element) {
        return Arrays.stream(element.getAttribute("points").split("[ ,]")).mapToDouble(Double::parseDouble).toArray();
    }

    /** Middle of the least and the greatest x. */
    static double middle(Element polygon) {
        double[] points = points(polygon);
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < points.length; i += 2) {
            least = Math.min(least, points[i]);
            most = Math.max(most, points[i]);
        }
        return (least + most) / 2;
    }

    List<Element> all(Predicate<Element> which) {
        List<Element> found = new ArrayList<>();
        collect(root, which, found);
        return found;
    }

    private static void collect(Element element, Predicate<Element> which, List<Element> found) {
        if (which.test(element)) {
            found.add(element);
        }
        for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element inner) {
                collect(inner, which, found);
            }
        }
    }
}
