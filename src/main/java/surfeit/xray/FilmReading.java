package surfeit.xray;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;
import surfeit.element.Element;

/**
 * What a spot under a film reads at one beam energy, by the line an analyst would take for each element, if the
 * workstation takes film and material for one ({@link FilmedBulk}).
 *
 * <p>Bounds take the film's part of every element from 0.85 to 1.15 of what is true, as in all comparisons
 * ({@link FilmSignal}). A film thicker than those reached gets no reading. Immutable, thread-safe.
 *
 * @param withoutLine elements of film or material no line of which can be used; the others are closed without them
 */
public record FilmReading(List<OfElement> elements, List<Element> withoutLine) {

    /**
     * One element as its line sees it.
     *
     * @param transmission share of the line from below that gets through the film
     * @param overPure     intensity of the film's own part over that of the bulk pure element; empty where the film holds
     *                     none of it or is too thick
     * @param bare         mass fraction read without the film; empty where no line of the material can be used
     * @param read         what is read with the film; empty where it is too thick for the model, or nothing is read
     */
    public record OfElement(Line line, double transmission, Optional<Estimate> overPure, OptionalDouble bare,
                            Optional<ElementReading> read) {
    }

    public FilmReading {
        elements = List.copyOf(elements);
        withoutLine = List.copyOf(withoutLine);
    }

    /** A film on the material of a question, at one of its beam energies. */
    public static FilmReading of(ThinFilm film, SignalDepthQuery query, double beamEnergyKev, ProfileCache profiles) {
        Material bulk = query.material();
        FilmedBulk filmed = FilmedBulk.ofSeen(film.material(), bulk, beamEnergyKev, query.effectiveTakeOffDeg(),
            profiles);
        SortedSet<Element> unseen = new TreeSet<>(bulk.massFractions().keySet());
        unseen.addAll(film.material().massFractions().keySet());
        unseen.removeIf(element -> bulk.massFraction(element) + film.material().massFraction(element) == 0
            || filmed.elements().contains(element));
        List<OfElement> elements = new ArrayList<>();
        Optional<List<ElementReading>> readings = filmed.readings(film.massThickness());
        for (int j = 0; j < filmed.elements().size(); j++) {
            int index = j;
            elements.add(element(film, filmed, query, beamEnergyKev, filmed.elements().get(j),
                readings.map(all -> all.get(index)), profiles));
        }
        return new FilmReading(elements, List.copyOf(unseen));
    }

    private static OfElement element(ThinFilm film, FilmedBulk filmed, SignalDepthQuery query, double beam,
                                     Element element, Optional<ElementReading> reading, ProfileCache profiles) {
        double thickness = film.massThickness();
        Line line = filmed.line(element);
        Optional<Estimate> overPure = Optional.empty();
        if (film.material().massFraction(element) > 0 && thickness <= filmed.reach(element)) {
            overPure = Optional.of(FilmSignal.of(film.material(), query.material(), line, beam,
                query.effectiveTakeOffDeg(), profiles).integrated(thickness));
        }
        return new OfElement(line, film.transmission(line, query.effectiveTakeOffDeg()), overPure,
            filmed.bare(element), reading);
    }
}
