package surfeit.report;

import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import surfeit.element.Element;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.ReportedValue;
import surfeit.spot.Spot;

/**
 * Collects the X-ray lines that the spots of a sample say their elements were read from. Memory does not grow with the
 * number of spots. For one use, not thread-safe.
 */
public final class StatedLines implements Consumer<Spot> {
    /** Different lines kept for one element; no element is read from more. Judgement. */
    private static final int MOST_OF_AN_ELEMENT = 6;

    private final Map<Element, SortedSet<String>> lines = new TreeMap<>();

    /** The lines stated by the spots of a source, by symbol: {@code Ag -> La}. */
    public static Map<String, String> of(SpotSource source) {
        StatedLines stated = new StatedLines();
        source.forEachSpecimen(stated);
        return stated.bySymbol();
    }

    @Override
    public void accept(Spot spot) {
        spot.values().forEach((element, value) -> {
            if (value instanceof ReportedValue.Measured measured && measured.line().isPresent()) {
                SortedSet<String> own = lines.computeIfAbsent(element, each -> new TreeSet<>());
                if (own.size() < MOST_OF_AN_ELEMENT) {
                    own.add(measured.line().get());
                }
            }
        });
    }

    /** What was collected; several lines of one element stand side by side. */
    public Map<String, String> bySymbol() {
        Map<String, String> bySymbol = new TreeMap<>();
        lines.forEach((element, own) -> bySymbol.put(element.symbol(), Listing.and(own.stream().toList())));
        return bySymbol;
    }
}
