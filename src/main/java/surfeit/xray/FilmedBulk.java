package surfeit.xray;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.DoubleStream;
import surfeit.element.Element;

/**
 * What a spot reads on a bulk that carries a film, if the workstation takes both for one homogeneous material.
 *
 * <pre>
 *     w_j emitted_j = w0_j (emitted_j - top_j(t, chi_bulk)) exp(-(chi_film - chi_bulk) t)  +  wF_j top_j(t, chi_film)
 * </pre>
 * then closed to one. w0 and wF mass fractions of bulk and film, t mass thickness in g/cm², emitted_j of the line of
 * element j in the bulk and top_j of that the part from above t ({@link DepthProfile#emittedFromTop}): every line sees
 * its own share of the film. For thin films the second term is {@link FilmSignal#extraMassFraction}; its bounds (0.85
 * to 1.15 of Monte Carlo, {@link FilmSignal#READ_BACK_REACH}) hold here too. Electrons are taken to slow down and
 * scatter in the film as in the bulk. Immutable, thread-safe.
 */
public final class FilmedBulk {
    private final Map<Element, Seen> seen;

    /** One element as its line sees it; inBulk and inFilm mass fractions. */
    private record Seen(Line line, DepthProfile profile, double bulkChi, double filmChi, double emitted, double inBulk,
                        double inFilm) {

        /** The mass fraction read, before closing. */
        double read(double massThickness) {
            return read(massThickness, 1);
        }

        /** The same with the film's part taken this many times. */
        double read(double massThickness, double filmFactor) {
            double below = inBulk == 0 ? 0 : inBulk * fromBelow(massThickness);
            double film = inFilm == 0 ? 0 : inFilm * profile.emittedFromTop(massThickness, filmChi);
            return (below + film * filmFactor) / emitted;
        }

        /** What comes from below the film and out through it. */
        private double fromBelow(double massThickness) {
            double below = emitted - profile.emittedFromTop(massThickness, bulkChi);
            return below > 0 ? below * Math.exp((bulkChi - filmChi) * massThickness) : 0;
        }
    }

    private FilmedBulk(Map<Element, Seen> seen) {
        this.seen = seen;
    }

    /**
     * A bulk under a film at a beam energy, every element by the line an analyst would use; empty where an element has
     * none.
     */
    public static Optional<FilmedBulk> of(Material film, Material bulk, double beamEnergyKev, double takeOffDeg,
                                          ProfileCache profiles) {
        SortedSet<Element> elements = elements(film, bulk);
        FilmedBulk filmed = ofSeen(film, bulk, beamEnergyKev, takeOffDeg, profiles);
        return filmed.seen.size() == elements.size() ? Optional.of(filmed) : Optional.empty();
    }

    /** The same over those elements that have a line. */
    static FilmedBulk ofSeen(Material film, Material bulk, double beamEnergyKev, double takeOffDeg,
                             ProfileCache profiles) {
        Map<Element, Seen> seen = new LinkedHashMap<>();
        for (Element element : elements(film, bulk)) {
            Optional<Line> line = LineChoice.at(element, beamEnergyKev).chosen();
            if (line.isEmpty()) {
                continue;
            }
            DepthProfile profile = profiles.profile(bulk, line.get(), beamEnergyKev);
            double bulkChi = Absorption.chi(line.get(), bulk, takeOffDeg);
            seen.put(element, new Seen(line.get(), profile, bulkChi, Absorption.chi(line.get(), film, takeOffDeg),
                profile.emitted(bulkChi), bulk.massFraction(element), film.massFraction(element)));
        }
        return new FilmedBulk(seen);
    }

    private static SortedSet<Element> elements(Material film, Material bulk) {
        SortedSet<Element> elements = new TreeSet<>(bulk.massFractions().keySet());
        elements.addAll(film.massFractions().keySet());
        elements.removeIf(element -> bulk.massFraction(element) + film.massFraction(element) == 0);
        return elements;
    }

    /** The elements of film and bulk that are read. */
    List<Element> elements() {
        return List.copyOf(seen.keySet());
    }

    /**
     * What is read of an element at a mass thickness in g/cm², with bounds from the film's parts at 0.85 to 1.15 of the
     * truth; empty where the film is thicker than the comparison reached for any line, or no line gives anything.
     */
    Optional<ElementReading> reading(Element element, double massThickness) {
        if (seen.keySet().stream().anyMatch(any -> massThickness > reach(any))) {
            return Optional.empty();
        }
        double least = 1 / FilmSignal.INTEGRATED_HIGH;
        double most = 1 / FilmSignal.INTEGRATED_LOW;
        List<Element> elements = elements();
        double[] read = elements.stream().mapToDouble(any -> seen.get(any).read(massThickness)).toArray();
        if (DoubleStream.of(read).sum() == 0) {
            return Optional.empty();
        }
        return Optional.of(ElementReading.of(new Estimate(fraction(element, massThickness, 1, 1),
            fraction(element, massThickness, least, most), fraction(element, massThickness, most, least)), elements,
            read, elements.indexOf(element)));
    }

    /** The mass fraction read without the film; empty where no line of the bulk can be used. */
    OptionalDouble bare(Element element) {
        double sum = seen.values().stream().mapToDouble(Seen::inBulk).sum();
        return sum > 0 ? OptionalDouble.of(own(element).inBulk() / sum) : OptionalDouble.empty();
    }

    private double fraction(Element element, double massThickness, double ownFilm, double otherFilm) {
        double own = own(element).read(massThickness, ownFilm);
        double others = 0;
        for (Map.Entry<Element, Seen> entry : seen.entrySet()) {
            others += entry.getKey().equals(element) ? 0 : entry.getValue().read(massThickness, otherFilm);
        }
        return own / (own + others);
    }

    /** Mass fractions read at a mass thickness in g/cm², over the elements of bulk and film. */
    public Map<Element, Double> massFractions(double massThickness) {
        Map<Element, Double> read = new LinkedHashMap<>();
        double sum = 0;
        for (Map.Entry<Element, Seen> entry : seen.entrySet()) {
            double value = entry.getValue().read(massThickness);
            read.put(entry.getKey(), value);
            sum += value;
        }
        double total = sum;
        read.replaceAll((element, value) -> value / total);
        return read;
    }

    /** Atoms of one element read over those of all others, at a mass thickness in g/cm². */
    public double atomicOdds(Element element, double massThickness) {
        double own = 0;
        double others = 0;
        for (Map.Entry<Element, Seen> entry : seen.entrySet()) {
            double atoms = entry.getValue().read(massThickness) / entry.getKey().atomicWeight();
            if (entry.getKey().equals(element)) {
                own += atoms;
            } else {
                others += atoms;
            }
        }
        return own / others;
    }

    /** The line an element is read by. */
    public Line line(Element element) {
        return own(element).line();
    }

    /** Mean mass depth in g/cm² from which an element's X-rays come out of the bulk. */
    public double meanMassDepth(Element element) {
        return own(element).profile().meanMassDepth(own(element).bulkChi());
    }

    /** Greatest mass thickness in g/cm² the film model was compared for, by an element's line. */
    public double reach(Element element) {
        return FilmSignal.READ_BACK_REACH * own(element).profile().meanMassDepth();
    }

    private Seen own(Element element) {
        return Optional.ofNullable(seen.get(element)).orElseThrow(() -> new IllegalArgumentException(
            "Expected an element of film or bulk " + seen.keySet() + ", got " + element + "."));
    }
}
