package surfeit.xray;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;
import surfeit.element.Element;

/**
 * What a spot reads on a bulk that carries a film, if the workstation takes both for one homogeneous material.
 *
 * <pre>
 *     I_j = w0_j (emitted_j - top_j(t, chi_bulk)) exp(-(chi_film - chi_bulk) t)  +  wF_j top_j(t, chi_film)
 * </pre>
 * turned to mass fractions by {@link MatrixCorrection}, over the elements of both. w0 and wF mass fractions of bulk and
 * film, t mass thickness in g/cm², emitted_j of the line of element j in the bulk and top_j of that the part from above
 * t ({@link DepthProfile#emittedFromTop}): every line sees its own share of the film. The film's part has the bounds of
 * {@link FilmSignal} (0.85 to 1.15 of Monte Carlo, {@link FilmSignal#READ_BACK_REACH}). Electrons are taken to slow
 * down and scatter in the film as in the bulk. A workstation that is told to leave the film's elements out corrects for
 * the bulk alone: that is not this. Immutable, thread-safe.
 */
public final class FilmedBulk {
    private final List<Element> elements;
    private final List<Seen> seen;
    private final MatrixCorrection correction;

    /** One element as its line sees it; inBulk and inFilm mass fractions. */
    private record Seen(Line line, DepthProfile profile, double bulkChi, double filmChi, double emitted, double inBulk,
                        double inFilm) {

        /** Intensity of the line, the film's part taken so many times. */
        double intensity(double massThickness, double filmFactor) {
            double below = inBulk == 0 ? 0 : inBulk * fromBelow(massThickness);
            double film = inFilm == 0 ? 0 : inFilm * profile.emittedFromTop(massThickness, filmChi);
            return below + film * filmFactor;
        }

        /** What comes from below the film and out through it. */
        private double fromBelow(double massThickness) {
            double below = emitted - profile.emittedFromTop(massThickness, bulkChi);
            return below > 0 ? below * Math.exp((bulkChi - filmChi) * massThickness) : 0;
        }
    }

    private FilmedBulk(List<Seen> seen, double beamEnergyKev, double takeOffDeg) {
        this.seen = List.copyOf(seen);
        this.elements = seen.stream().map(one -> one.line().element()).toList();
        this.correction = new MatrixCorrection(seen.stream().map(Seen::line).toList(), beamEnergyKev, takeOffDeg);
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
        List<Seen> seen = new ArrayList<>();
        for (Element element : elements(film, bulk)) {
            Optional<Line> line = LineChoice.at(element, beamEnergyKev).chosen();
            if (line.isEmpty()) {
                continue;
            }
            DepthProfile profile = profiles.profile(bulk, line.get(), beamEnergyKev);
            double bulkChi = Absorption.chi(line.get(), bulk, takeOffDeg);
            seen.add(new Seen(line.get(), profile, bulkChi, Absorption.chi(line.get(), film, takeOffDeg),
                profile.emitted(bulkChi), bulk.massFraction(element), film.massFraction(element)));
        }
        return new FilmedBulk(seen, beamEnergyKev, takeOffDeg);
    }

    private static SortedSet<Element> elements(Material film, Material bulk) {
        SortedSet<Element> elements = new TreeSet<>(bulk.massFractions().keySet());
        elements.addAll(film.massFractions().keySet());
        elements.removeIf(element -> bulk.massFraction(element) + film.massFraction(element) == 0);
        return elements;
    }

    /** The elements of film and bulk that are read. */
    List<Element> elements() {
        return elements;
    }

    /**
     * What is read of every element at a mass thickness in g/cm², with bounds from the film's parts at 0.85 to 1.15 of
     * the truth; empty where the film is thicker than the comparison reached for any line, or no line gives anything.
     */
    Optional<List<ElementReading>> readings(double massThickness) {
        if (elements.stream().anyMatch(any -> massThickness > reach(any))) {
            return Optional.empty();
        }
        double[] read = read(intensities(massThickness, 1, -1, 1));
        if (read.length == 0) {
            return Optional.empty();
        }
        double least = 1 / FilmSignal.INTEGRATED_HIGH;
        double most = 1 / FilmSignal.INTEGRATED_LOW;
        List<ElementReading> readings = new ArrayList<>();
        for (int j = 0; j < read.length; j++) {
            double one = read(intensities(massThickness, most, j, least))[j];
            double other = read(intensities(massThickness, least, j, most))[j];
            double low = Math.min(read[j], Math.min(one, other));
            double high = Math.max(read[j], Math.max(one, other));
            readings.add(ElementReading.of(new Estimate(read[j], low, high), elements, read, j));
        }
        return Optional.of(List.copyOf(readings));
    }

    /** The mass fraction read without the film; empty where no line of the bulk can be used. */
    OptionalDouble bare(Element element) {
        double[] read = read(intensities(0, 1, -1, 1));
        return read.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(read[elements.indexOf(element)]);
    }

    /** @param ownFilm, otherFilm how many times the film's part of one line and that of the others are taken */
    private double[] intensities(double massThickness, double otherFilm, int own, double ownFilm) {
        double[] intensities = new double[seen.size()];
        for (int j = 0; j < intensities.length; j++) {
            intensities[j] = seen.get(j).intensity(massThickness, j == own ? ownFilm : otherFilm);
        }
        return intensities;
    }

    /** The reading of every line's element; nothing where no line gives anything. */
    private double[] read(double[] intensities) {
        double[] first = new double[intensities.length];
        double sum = 0;
        for (int j = 0; j < first.length; j++) {
            first[j] = intensities[j] / seen.get(j).emitted();
            sum += first[j];
        }
        return sum == 0 ? new double[0] : correction.read(intensities, first);
    }

    /** Mass fractions read at a mass thickness in g/cm², over the elements of bulk and film. */
    public Map<Element, Double> massFractions(double massThickness) {
        double[] read = read(intensities(massThickness, 1, -1, 1));
        Map<Element, Double> fractions = new LinkedHashMap<>();
        for (int j = 0; j < read.length; j++) {
            fractions.put(elements.get(j), read[j]);
        }
        return fractions;
    }

    /** Atoms of one element read over those of all others, at a mass thickness in g/cm². */
    public double atomicOdds(Element element, double massThickness) {
        double own = 0;
        double others = 0;
        for (Map.Entry<Element, Double> read : massFractions(massThickness).entrySet()) {
            double atoms = read.getValue() / read.getKey().atomicWeight();
            if (read.getKey().equals(element)) {
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
        int at = elements.indexOf(element);
        if (at < 0) {
            throw new IllegalArgumentException("Expected an element of film or bulk " + elements + ", got " + element
                + ".");
        }
        return seen.get(at);
    }
}
