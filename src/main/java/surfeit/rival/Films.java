package surfeit.rival;

import java.util.Map;
import java.util.Optional;
import surfeit.element.Element;
import surfeit.xray.FilmSignal;
import surfeit.xray.Line;
import surfeit.xray.LineChoice;
import surfeit.xray.Material;
import surfeit.xray.RecentResults;
import surfeit.xray.ThinFilm;

/**
 * What a film of known thickness on the nominal alloy adds to readings, and what it takes away. Thread-safe.
 *
 * <p>Added mass fractions are upper bounds: the integrated film formula read at least 0.85 of an independent Monte Carlo
 * ({@link FilmSignal}), so its value is divided by that.
 */
final class Films {
    private static final double READ_AT_LEAST = 0.85;
    private static final int FILMS_KEPT = 32;

    private final GroupPhysics physics;
    private final RecentResults<ThinFilm, double[]> added = new RecentResults<>(FILMS_KEPT);
    private final RecentResults<ThinFilm, double[]> transmitted = new RecentResults<>(FILMS_KEPT);
    private final RecentResults<Coat, Double> coats = new RecentResults<>(FILMS_KEPT);

    private record Coat(Element element, double thicknessNm) {
    }

    Films(GroupPhysics physics) {
        this.physics = physics;
    }

    /** Mass fractions, per mass of the alloy, that a film seems to add to each closed element. */
    double[] added(ThinFilm film) {
        return added.get(film, () -> {
            double[] amounts = new double[physics.elements().size()];
            for (int i = 0; i < amounts.length; i++) {
                Optional<Line> line = physics.signal(i).map(LineSignal::line);
                boolean holds = film.material().massFraction(physics.elements().get(i)) > 0;
                amounts[i] = holds && line.isPresent() ? apparent(film, line.get()) : 0;
            }
            return amounts;
        });
    }

    /** Apparent mass fraction of a coating's element beside the alloy, on the line an analyst would choose for it. */
    double coatingAmount(Element element, double thicknessNm) {
        return coats.get(new Coat(element, thicknessNm), () -> LineChoice.at(element, physics.beamEnergyKev()).chosen()
            .map(line -> apparent(coating(element, thicknessNm), line)).orElse(0.0));
    }

    /** Share of each closed element's line that gets through a film. */
    double[] transmitted(ThinFilm film) {
        return transmitted.get(film, () -> {
            double[] shares = new double[physics.elements().size()];
            for (int i = 0; i < shares.length; i++) {
                shares[i] = physics.signal(i).map(s -> film.transmission(s.line(), physics.takeOffDeg())).orElse(1.0);
            }
            return shares;
        });
    }

    /** A coating at the density of its solid element; without one, as thick as water would be. */
    static ThinFilm coating(Element element, double thicknessNm) {
        double density = element.gasAtRoomTemperature() ? 1 : element.density().orElse(1);
        return new ThinFilm(Material.of(Map.of(element, 1.0), density), thicknessNm);
    }

    private double apparent(ThinFilm film, Line line) {
        FilmSignal signal = FilmSignal.of(film.material(), physics.material(), line, physics.beamEnergyKev(),
            physics.takeOffDeg(), physics.profiles());
        return signal.integratedRatio(film.massThickness()) * signal.pureEmission() / signal.substrateEmission() / READ_AT_LEAST;
    }
}
