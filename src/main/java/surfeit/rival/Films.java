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
 * <p>Added mass fractions are upper bounds: the integrated film formula read at least 0.85 of an independent Monte
 * Carlo ({@link FilmSignal}), so its value is divided by that.
 */
final class Films {
    private static final double READ_AT_LEAST = 0.85;
    private static final int FILMS_KEPT = 32;

    private final GroupPhysics physics;
    private final RecentResults<String, double[]> residues = new RecentResults<>(FILMS_KEPT);
    private final RecentResults<CoatKey, Coat> coats = new RecentResults<>(FILMS_KEPT);

    private record CoatKey(Element element, double thicknessNm) {
    }

    /**
     * A coating of one element. The arrays are read only.
     *
     * @param added       mass fractions, per mass of the alloy, it seems to add to each closed element
     * @param transmitted share of each closed element's line that gets through it
     * @param amount      its own apparent mass fraction, on the line an analyst would choose for it; 0 without one
     */
    record Coat(double[] added, double[] transmitted, double amount) {
    }

    Films(GroupPhysics physics) {
        this.physics = physics;
    }

    /** Mass fractions, per mass of the alloy, that a residue of usual thickness seems to add to each closed element. */
    double[] added(Deposit deposit) {
        return residues.get(deposit.residue().id(),
            () -> added(new ThinFilm(deposit.residue().material(), deposit.usualThicknessNm())));
    }

    /** A coating of an element on the nominal alloy. */
    Coat coat(Element element, double thicknessNm) {
        return coats.get(new CoatKey(element, thicknessNm), () -> {
            ThinFilm film = coating(element, thicknessNm);
            double amount = LineChoice.at(element, physics.beamEnergyKev()).chosen().map(line -> apparent(film, line))
                .orElse(0.0);
            return new Coat(added(film), transmitted(film), amount);
        });
    }

    private double[] added(ThinFilm film) {
        double[] amounts = new double[physics.elements().size()];
        for (int i = 0; i < amounts.length; i++) {
            Optional<Line> line = physics.signal(i).map(LineSignal::line);
            boolean holds = film.material().massFraction(physics.elements().get(i)) > 0;
            amounts[i] = holds && line.isPresent() ? apparent(film, line.get()) : 0;
        }
        return amounts;
    }

    private double[] transmitted(ThinFilm film) {
        double[] shares = new double[physics.elements().size()];
        for (int i = 0; i < shares.length; i++) {
            shares[i] = physics.signal(i).map(s -> film.transmission(s.line(), physics.takeOffDeg())).orElse(1.0);
        }
        return shares;
    }

    /** A coating at the density of its solid element; without one, as thick as water would be. */
    private static ThinFilm coating(Element element, double thicknessNm) {
        double density = element.gasAtRoomTemperature() ? 1 : element.density().orElse(1);
        return new ThinFilm(Material.of(Map.of(element, 1.0), density), thicknessNm);
    }

    private double apparent(ThinFilm film, Line line) {
        FilmSignal signal = FilmSignal.of(film.material(), physics.material(), line, physics.beamEnergyKev(),
            physics.takeOffDeg(), physics.profiles());
        double ratio = signal.integratedRatio(film.massThickness()) / READ_AT_LEAST;
        return ratio * signal.pureEmission() / signal.substrateEmission();
    }
}
