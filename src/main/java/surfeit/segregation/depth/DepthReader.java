package surfeit.segregation.depth;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import surfeit.element.Element;
import surfeit.segregation.answer.DepthReading;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.spot.Sample;
import surfeit.statistics.CombinedError;
import surfeit.xray.ProfileCache;

/**
 * Tells surface films from deep phases by readings at several beam energies.
 *
 * <p>Asked for every feature measured at two or more energies and every element enriched in it at one of them. Two
 * hypotheses are tested with the shallowest and the deepest reading, a and b:
 * <pre>
 *     stays:  theta_a = theta_b                                    c = theta_a - theta_b
 *     film:   both follow a film on nominal of one thickness       c = (d_b r_a - d_a r_b) / |d|
 * </pre>
 * theta log odds against nominal, r residuals from the fitted film ({@link FilmFit}), d how theta rises with its
 * thickness there. Random part particle by particle where three or more carry both, else of the groups; shared part
 * with the errors of both energies in full and independent, for the film with its model's 15 % too. That is wider than
 * the truth where both energies are read by the same line, and makes both claims harder. Claimed is what excludes the
 * other: a film where "stays" is excluded and "film" is not, a deep phase where it is the other way round.
 */
public final class DepthReader {
    /** Mean depths closer than this factor hold no information worth asking for. Judgement. */
    private static final double LEAST_DEPTH_RATIO = 1.2;
    private static final double SLOPE_STEP = 1e-4;

    private final Sample sample;
    private final double alpha;
    private final ProfileCache profiles;
    private final int questions;

    private DepthReader(Sample sample, double alpha, ProfileCache profiles, int questions) {
        this.sample = sample;
        this.alpha = alpha;
        this.profiles = profiles;
        this.questions = questions;
    }

    /** Readings for all features that raise the question, in the order of the groups. */
    public static List<DepthReading> of(List<GroupAnalysis> analyses, List<GroupFinding> findings, Sample sample,
                                        double alpha, ProfileCache profiles) {
        if (beamEnergies(analyses) < 2) {
            return List.of();
        }
        Map<String, List<GroupAnalysis>> features = new LinkedHashMap<>();
        Map<String, Set<Element>> enriched = new LinkedHashMap<>();
        for (int g = 0; g < analyses.size(); g++) {
            String feature = analyses.get(g).data().baseName();
            features.computeIfAbsent(feature, name -> new ArrayList<>()).add(analyses.get(g));
            Set<Element> own = enriched.computeIfAbsent(feature, name -> new LinkedHashSet<>());
            findings.get(g).elements().stream().filter(finding -> finding.outcome().verdict() == Verdict.ENRICHED)
                .forEach(finding -> own.add(finding.element()));
        }
        features.values().removeIf(groups -> beamEnergies(groups) < 2);
        int questions = features.keySet().stream().mapToInt(feature -> enriched.get(feature).size()).sum();
        DepthReader reader = new DepthReader(sample, alpha, profiles, questions);
        List<DepthReading> readings = new ArrayList<>();
        features.forEach((feature, groups) -> enriched.get(feature)
            .forEach(element -> readings.add(reader.read(feature, element, groups))));
        return List.copyOf(readings);
    }

    private static long beamEnergies(List<GroupAnalysis> groups) {
        return groups.size() < 2 ? groups.size()
            : groups.stream().flatMapToDouble(group -> group.data().beamEnergyKev().stream()).distinct().count();
    }

    private DepthReading read(String feature, Element element, List<GroupAnalysis> groups) {
        List<DepthPoint> points = groups.stream()
            .flatMap(group -> DepthPoint.of(group, element, sample, profiles).stream())
            .sorted(Comparator.comparingDouble(DepthPoint::meanMassDepth)).toList();
        if (points.size() < 2 || points.get(points.size() - 1).meanMassDepth()
            < LEAST_DEPTH_RATIO * points.get(0).meanMassDepth()) {
            return new DepthReading(feature, element, DepthReading.Word.CANNOT_TELL,
                DepthWords.energies(points, Optional.empty()), OptionalDouble.empty(), OptionalDouble.empty(),
                Optional.empty(), DepthWords.notAsked(element, points.size()));
        }
        DepthPoint a = points.get(0);
        DepthPoint b = points.get(points.size() - 1);
        FilmFit fit = FilmFit.of(points);
        double stays = Math.min(1, questions * CombinedError.twoSidedP(a.theta() - b.theta(), a.randomOfSum(1, b, -1),
            Math.hypot(a.shared(), b.shared())));
        double film = Math.min(1, questions * filmP(a, b, fit.massThickness()));
        DepthReading.Word word = word(a.theta() > b.theta(), stays <= alpha, film <= alpha);
        boolean possible = word == DepthReading.Word.SURFACE_FILM || word == DepthReading.Word.CANNOT_TELL;
        Optional<DepthReading.Film> told = possible ? fit.film(points) : Optional.empty();
        return new DepthReading(feature, element, word, DepthWords.energies(points, Optional.of(fit)),
            OptionalDouble.of(stays), OptionalDouble.of(film), told, DepthWords.of(word, points, told));
    }

    private static double filmP(DepthPoint a, DepthPoint b, double thickness) {
        double slopeA = slope(a, thickness);
        double slopeB = slope(b, thickness);
        double length = Math.hypot(slopeA, slopeB);
        double weightA = slopeB / length;
        double weightB = -slopeA / length;
        double c = weightA * (a.theta() - a.ofFilm(thickness)) + weightB * (b.theta() - b.ofFilm(thickness));
        double ofA = weightA * Math.hypot(a.shared(), modelU(a, thickness));
        double ofB = weightB * Math.hypot(b.shared(), modelU(b, thickness));
        double u = Math.hypot(Math.hypot(ofA, ofB), (weightA + weightB) * a.nominalU());
        return CombinedError.twoSidedP(c, a.randomOfSum(weightA, b, weightB), u);
    }

    /** The film model's error of 15 % either way, taken as rectangular and independent between energies. */
    private static double modelU(DepthPoint point, double thickness) {
        double most = point.ofFilm(FilmFit.MODEL_HIGH * thickness);
        double least = point.ofFilm(FilmFit.MODEL_LOW * thickness);
        return (most - least) / 2 / Math.sqrt(3);
    }

    private static double slope(DepthPoint point, double thickness) {
        double step = SLOPE_STEP * point.meanMassDepth();
        return (point.ofFilm(thickness + step) - point.ofFilm(thickness)) / step;
    }

    private static DepthReading.Word word(boolean rises, boolean staysExcluded, boolean filmExcluded) {
        if (staysExcluded) {
            return rises && !filmExcluded ? DepthReading.Word.SURFACE_FILM : DepthReading.Word.NEITHER;
        }
        return filmExcluded ? DepthReading.Word.DEEP : DepthReading.Word.CANNOT_TELL;
    }
}
