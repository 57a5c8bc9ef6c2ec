package surfeit.segregation.depth;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.segregation.answer.DepthReading;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.Figures;
import surfeit.xray.LateralSpread;
import surfeit.xray.Material;

/** Says what readings at several beam energies show, in a sentence or two. */
final class DepthWords {
    private static final double NM_PER_UM = 1000;
    /** Micrograms in a gram. */
    private static final double MICROGRAM = 1e6;
    /** A feature this many times as wide as the X-ray source is not diluted. Judgement. */
    private static final double WIDE = 2;

    private DepthWords() {
    }

    static List<DepthReading.AtEnergy> energies(List<DepthPoint> points, Optional<FilmFit> fit) {
        return points.stream().map(point -> new DepthReading.AtEnergy(point.beamEnergyKev(),
            point.analysis().data().name(), point.model().line(point.symbol()).label(), meanDepthNm(point),
            point.oddsRatio(), filmOddsRatio(point, fit))).toList();
    }

    private static OptionalDouble meanDepthNm(DepthPoint point) {
        return bulk(point).stream().mapToDouble(bulk -> bulk.depthNm(point.meanMassDepth())).findFirst();
    }

    private static OptionalDouble filmOddsRatio(DepthPoint point, Optional<FilmFit> fit) {
        return fit.stream().mapToDouble(film -> Math.exp(point.ofFilm(film.massThickness()))).findFirst();
    }

    static String notAsked(Element element, int points) {
        return points < 2
            ? "Fewer than two beam energies give a usable reading of " + element
            + " with its scatter known; nothing tells its depth."
            : "The beam energies read " + element + " from nearly the same depth; take energies further apart.";
    }

    static String of(DepthReading.Word word, List<DepthPoint> points, Optional<DepthReading.Film> film) {
        DepthPoint shallow = points.get(0);
        DepthPoint deep = points.get(points.size() - 1);
        String both = shallow.symbol() + " has the odds ratio " + odds(shallow) + " at " + energy(shallow) + " keV and "
            + odds(deep) + " at " + energy(deep) + " keV; ";
        return both + switch (word) {
            case SURFACE_FILM -> "it fades as the beam reaches deeper, as a film at the surface does."
                + film(shallow, film) + patch(deep);
            case DEEP -> "it stays as the beam reaches deeper, where a film would have faded. It reaches "
                + "at least as deep as the spots read at "
                + energy(deep) + " keV" + onAverage(deep) + ".";
            case NEITHER -> shallow.theta() > deep.theta()
                ? "it fades as the beam reaches deeper, but not as a film on the nominal alloy would: a film on a "
                    + "feature that differs itself, or a film that holds other elements." + patch(deep)
                : "it grows as the beam reaches deeper: it lies beneath something that holds less of it, or the "
                    + "beam energies are not quantified alike.";
            case CANNOT_TELL -> "neither a film nor a deep phase is excluded. The errors of two beam energies do not "
                + "cancel: measure a piece of known composition at each of them, or take energies further apart."
                + film(shallow, film);
        };
    }

    private static String odds(DepthPoint point) {
        return Figures.of(Math.exp(point.theta()), 3);
    }

    private static String onAverage(DepthPoint point) {
        OptionalDouble depth = meanDepthNm(point);
        return depth.isEmpty() ? "" : " (" + Figures.of(depth.getAsDouble(), 2) + " nm on average)";
    }

    private static String energy(DepthPoint point) {
        double kev = point.beamEnergyKev();
        return kev == Math.rint(kev) ? Long.toString(Math.round(kev)) : Double.toString(kev);
    }

    private static String film(DepthPoint point, Optional<DepthReading.Film> film) {
        if (film.isEmpty()) {
            return " If it is a film, it is thicker than the thin-film model holds for.";
        }
        Estimate mass = film.get().massThickness();
        String most = Double.isInfinite(mass.high()) ? "no upper bound" : Figures.of(mass.high() * MICROGRAM, 2);
        String nm = film.get().thicknessNm().map(own -> ", " + Figures.of(own.value(), 2) + " nm").orElse("");
        return " As a film of pure " + point.symbol() + " on the nominal alloy it would hold "
            + Figures.of(mass.value() * MICROGRAM, 2) + " \u00b5g/cm\u00b2 (" + Figures.of(mass.low() * MICROGRAM, 2) + " to "
            + most + ")" + nm + ".";
    }

    /** A narrow patch is diluted less at low beam energy, and looks like a film. */
    private static String patch(DepthPoint deep) {
        OptionalDouble size = deep.analysis().data().facts().smallestFeatureUm();
        Optional<Material> bulk = bulk(deep);
        if (bulk.isEmpty()) {
            return " A patch narrow against the X-ray source would do the same.";
        }
        double width = LateralSpread.reedDiameterNm(bulk.get(), deep.model().line(deep.symbol()).edgeEnergyKev(),
            deep.beamEnergyKev()) / NM_PER_UM;
        return size.isPresent() && size.getAsDouble() >= WIDE * width ? ""
            : " A patch narrow against the X-ray source (about " + Figures.of(width, 2) + " \u00b5m at " + energy(deep)
                + " keV) would do the same.";
    }

    /** The nominal alloy with its density, where its elements' volumes give one. */
    private static Optional<Material> bulk(DepthPoint point) {
        NominalFractions nominal = point.analysis().comparison().nominal();
        return Material.byVolumesIfKnown(Material.massFractions(nominal.elements(), nominal.middles()));
    }
}
