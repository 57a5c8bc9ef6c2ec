package surfeit.xray;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import surfeit.element.Element;

/**
 * Which line of an element an analyst would measure at a beam energy, and how well it is excited.
 *
 * <p>Trade habit, in this order; within each step the most energetic line, which is absorbed least:
 * <ol>
 * <li>usable (overvoltage of its own edge at least 2) and at least 1 keV,
 * <li>marginal (at least 1.5) and at least 1 keV,
 * <li>usable or marginal below 1 keV (soft: strong absorption, chemical shifts, crowded),
 * <li>barely excited, but above 1.25, if the element has nothing better.
 * </ol>
 * Otherwise none. Common practice, no source; the limits are those of {@link Excitation}.
 * {@code chosen} is absent where no line can be used. Immutable, thread-safe.
 */
public record LineChoice(Element element, double beamEnergyKev, Optional<Line> chosen, Excitation excitation,
                         List<Line> selectable) {

    /** Below this a line counts as soft (judgement; the range where absorption tables disagree most). */
    public static final double SOFT_LINE_KEV = 1.0;

    /** All elements at some ten beam energies; a choice is some 100 bytes. */
    private static final RecentResults<Inputs, LineChoice> KNOWN = new RecentResults<>(1024);

    private record Inputs(Element element, double beamEnergyKev) {
    }

    /** The choice for an element at a beam energy, from memory or made now. */
    public static LineChoice at(Element element, double beamEnergyKev) {
        BeamEnergy.check(beamEnergyKev);
        return KNOWN.get(new Inputs(element, beamEnergyKev), () -> made(element, beamEnergyKev));
    }

    private static LineChoice made(Element element, double beamEnergyKev) {
        List<Line> selectable = LineTable.standard().lines(element).stream()
            .filter(line -> line.overvoltage(beamEnergyKev) > Excitation.SELECTABLE_OVERVOLTAGE).toList();
        Optional<Line> chosen = Stream.<Predicate<Line>>of(
                line -> !soft(line) && Excitation.of(line, beamEnergyKev) == Excitation.USABLE,
                line -> !soft(line) && Excitation.of(line, beamEnergyKev) == Excitation.MARGINAL,
                line -> line.overvoltage(beamEnergyKev) >= Excitation.LEAST_OVERVOLTAGE,
                line -> true)
            .flatMap(step -> selectable.stream().filter(step).max(Comparator.comparingDouble(Line::energyKev)).stream())
            .findFirst();
        Excitation excitation = chosen.map(line -> Excitation.of(line, beamEnergyKev))
            .orElseGet(() -> bestOf(element, beamEnergyKev));
        return new LineChoice(element, beamEnergyKev, chosen, excitation, selectable);
    }

    /** Whether a line lies below 1 keV. */
    public static boolean soft(Line line) {
        return line.energyKev() < SOFT_LINE_KEV;
    }

    private static Excitation bestOf(Element element, double beamEnergyKev) {
        return LineTable.standard().lines(element).stream().map(line -> Excitation.of(line, beamEnergyKev))
            .min(Comparator.naturalOrder()).orElse(Excitation.NOT_EXCITED);
    }
}
