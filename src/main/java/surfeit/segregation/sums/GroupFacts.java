package surfeit.segregation.sums;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import surfeit.composition.Basis;
import surfeit.element.Element;
import surfeit.rival.Evidence;
import surfeit.spot.Conditions;
import surfeit.spot.Form;
import surfeit.spot.Position;
import surfeit.spot.Spot;

/**
 * What is known of a group's spots beside their composition: totals, positions, sizes, limits. Not thread-safe.
 *
 * <p>The raw total is the stated one; else the sum of everything the spot reports.
 */
public final class GroupFacts {
    /** Rounded parts of a normalised analysis may add up to this much beside one. Judgement: four half steps of 0.01 %. */
    private static final double NORMALISED_WITHIN = 2.1e-4;
    private static final int NAMES_MAX = 20;
    /** What is said of a group nothing is asked about. */
    public static final Evidence NO_EVIDENCE = new Evidence(List.of(), OptionalDouble.empty(),
        new Evidence.Totals(1, 1, false), Map.of(), Map.of(), Set.of(), Set.of(), Set.of(), false);

    private final BesideTally beside;
    private final StatedGeometry geometry = new StatedGeometry();
    private final Set<Basis> bases = EnumSet.noneOf(Basis.class);
    private final Map<Position, Integer> positions = new EnumMap<>(Position.class);
    private final List<String> unusable = new ArrayList<>();
    private final Set<String> sessions = new TreeSet<>();
    private long spots;
    private long normalised;
    private double lowestTotal = Double.POSITIVE_INFINITY;
    private double highestTotal = Double.NEGATIVE_INFINITY;
    private double smallestFeatureUm = Double.POSITIVE_INFINITY;
    private double lowestTilt = Double.POSITIVE_INFINITY;
    private double highestTilt = Double.NEGATIVE_INFINITY;
    private long withTilt;

    /** @param closed the elements the group is closed over; all others are noted beside */
    GroupFacts(List<Element> closed) {
        beside = new BesideTally(closed);
    }

    void add(Spot spot, SpotInHand hand, SpotParts parts) {
        spots++;
        beside.add(spot, hand, parts);
        geometry.add(spot.conditions());
        bases.add(spot.basis());
        Conditions conditions = spot.conditions();
        if (spot.session().isPresent()) {
            sessions.add(spot.session().get());
        }
        if (conditions.position().isPresent()) {
            positions.merge(conditions.position().get(), 1, Integer::sum);
        }
        if (conditions.featureSizeUm().isPresent()) {
            smallestFeatureUm = Math.min(smallestFeatureUm, conditions.featureSizeUm().getAsDouble());
        }
        if (conditions.tiltDeg().isPresent()) {
            withTilt++;
            lowestTilt = Math.min(lowestTilt, conditions.tiltDeg().getAsDouble());
            highestTilt = Math.max(highestTilt, conditions.tiltDeg().getAsDouble());
        }
        double total = conditions.rawTotal().isPresent() ? conditions.rawTotal().getAsDouble()
            : hand.total();
        lowestTotal = Math.min(lowestTotal, total);
        highestTotal = Math.max(highestTotal, total);
        normalised += Math.abs(total - 1) <= NORMALISED_WITHIN ? 1 : 0;
    }

    /** A spot that cannot be closed, because none of its closed elements is above zero. */
    void addUnusable(Spot spot) {
        if (unusable.size() < NAMES_MAX) {
            unusable.add(spot.label());
        }
    }

    void writeTo(SumsOut out) {
        beside.writeTo(out);
        geometry.writeTo(out);
        out.texts("bases", bases.stream().map(Basis::name).toList());
        out.count("positions stated", positions.size());
        positions.forEach((position, count) -> {
            out.text("position", position.name());
            out.count("spots there", count);
        });
        out.texts("spots that cannot be closed", unusable);
        out.texts("sessions", sessions);
        out.count("spots", spots);
        out.count("spots with a total of one", normalised);
        out.real("lowest total", lowestTotal);
        out.real("highest total", highestTotal);
        out.real("smallest feature", smallestFeatureUm);
        out.real("lowest tilt", lowestTilt);
        out.real("highest tilt", highestTilt);
        out.count("spots with a tilt", withTilt);
    }

    void readFrom(SumsIn in) {
        beside.readFrom(in);
        geometry.readFrom(in);
        for (long left = in.count(); left > 0; left--) {
            bases.add(in.oneOf(Basis.values()));
        }
        for (long left = in.count(); left > 0; left--) {
            positions.put(in.oneOf(Position.values()), (int) in.count());
        }
        in.texts(unusable);
        in.texts(sessions);
        spots = in.count();
        normalised = in.count();
        lowestTotal = in.real();
        highestTotal = in.real();
        smallestFeatureUm = in.real();
        lowestTilt = in.real();
        highestTilt = in.real();
        withTilt = in.count();
    }

    void merge(GroupFacts other) {
        other.positions.forEach((position, count) -> positions.merge(position, count, Integer::sum));
        unusable.addAll(other.unusable.subList(0, Math.min(other.unusable.size(), NAMES_MAX - unusable.size())));
        sessions.addAll(other.sessions);
        beside.merge(other.beside);
        geometry.merge(other.geometry);
        bases.addAll(other.bases);
        spots += other.spots;
        normalised += other.normalised;
        lowestTotal = Math.min(lowestTotal, other.lowestTotal);
        highestTotal = Math.max(highestTotal, other.highestTotal);
        smallestFeatureUm = Math.min(smallestFeatureUm, other.smallestFeatureUm);
        lowestTilt = Math.min(lowestTilt, other.lowestTilt);
        highestTilt = Math.max(highestTilt, other.highestTilt);
        withTilt += other.withTilt;
    }

    /**
     * What its spots say beside their composition.
     *
     * @param defaultLimit limit as a mass fraction where an element was looked for without a stated one
     * @param meanWeight   mean atomic weight of the closed elements
     */
    public Evidence evidence(Form form, double defaultLimit, double meanWeight) {
        return new Evidence(geometry.stances(form), smallestFeatureUm(),
            new Evidence.Totals(lowestTotal, highestTotal, allNormalised()), beside.found(defaultLimit, meanWeight),
            beside.lines(),
            bases, sessions, positions.keySet(), positions.values().stream().mapToInt(Integer::intValue).sum() == spots);
    }

    public long spots() {
        return spots;
    }

    public Map<Position, Integer> positions() {
        return positions;
    }

    public List<String> unusable() {
        return unusable;
    }

    public Set<String> sessions() {
        return sessions;
    }

    /** True where every spot's total is 100 %: then the total carries no information. */
    public boolean allNormalised() {
        return spots > 0 && normalised == spots;
    }

    public double lowestTotal() {
        return lowestTotal;
    }

    public double highestTotal() {
        return highestTotal;
    }

    public OptionalDouble smallestFeatureUm() {
        return Double.isInfinite(smallestFeatureUm) ? OptionalDouble.empty() : OptionalDouble.of(smallestFeatureUm);
    }

    /** Lowest stated tilt in degrees, positive towards the detector; empty unless every spot states one. */
    OptionalDouble lowestTiltDeg() {
        return withTilt == spots && spots > 0 ? OptionalDouble.of(lowestTilt) : OptionalDouble.empty();
    }

    OptionalDouble highestTiltDeg() {
        return withTilt == spots && spots > 0 ? OptionalDouble.of(highestTilt) : OptionalDouble.empty();
    }
}
