package surfeit.rival;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import surfeit.element.Element;
import surfeit.xray.ForeignSource;
import surfeit.xray.Line;
import surfeit.xray.LineOverlap;
import surfeit.xray.Material;
import surfeit.xray.ProfileCache;
import surfeit.xray.RecentResults;
import surfeit.xray.Resolution;

/**
 * All the physics of a nominal alloy at one beam energy that the causes ask for, worked out once and kept.
 *
 * <p>The nominal, not the measured composition: a rival says that the alloy was nominal and only looked shifted. What
 * depends on more (tilt, foreign elements, films) is worked out when first asked for and kept as well, bounded.
 * Thread-safe.
 */
final class GroupPhysics {
    /** How far the beam energy at the surface may differ from the one set: calibration and charging. Judgement, keV. */
    static final double BEAM_ERROR_KEV = 0.2;
    /** Exponent of the intensity law (U - 1)^n: the middle of 1.3 to 1.7, from memory. */
    private static final double INTENSITY_EXPONENT = 1.5;
    /**
     * A particle counts as thick where a flat layer of its thickness holds this share of every line's signal
     * (judgement).
     */
    private static final double WHOLE_SIGNAL = 0.98;
    private static final int STANCES_KEPT = 16;
    private static final int FOREIGN_KEPT = 32;

    private final AlloyInputs inputs;
    private final double[] massFractions;
    private final OptionalDouble density;
    private final Material material;
    private final ProfileCache profiles;
    private final LineOverlap overlap;
    private final List<Optional<Line>> lines;
    private final List<Optional<LineSignal>> signals;
    private final List<List<Disturbance>> own;
    private final List<List<Disturbance>> uninvited;
    private final double[][] beamError;
    private final Films films;
    private final RecentResults<Stance, TiltShifts> tilts = new RecentResults<>(STANCES_KEPT);
    private final RecentResults<Element, List<Optional<Disturbance>>> foreign = new RecentResults<>(FOREIGN_KEPT);
    private final RecentResults<Double, double[][]> thin = new RecentResults<>(STANCES_KEPT);
    private final RecentResults<Map<Element, Double>, double[]> leftOut = new RecentResults<>(STANCES_KEPT);

    GroupPhysics(AlloyInputs inputs, ProfileCache profiles) {
        this.inputs = inputs;
        this.profiles = profiles;
        massFractions = AlloyMaterial.massFractions(inputs.elements(), inputs.nominal());
        density = AlloyMaterial.density(inputs.elements(), massFractions);
        material = AlloyMaterial.of(inputs.elements(), massFractions);
        overlap = new LineOverlap(new Resolution(inputs.fwhmEv()), inputs.beamEnergyKev());
        lines = inputs.elements().stream().map(element -> LineSignal.lineOf(element,
            Optional.of(inputs.lines().getOrDefault(element, "")), inputs.beamEnergyKev())).toList();
        signals = lines.stream().map(line -> line.filter(this::excited).map(excited ->
            LineSignal.of(excited, material, inputs.beamEnergyKev(), inputs.takeOffDeg(), profiles))).toList();
        Set<Element> outside = new TreeSet<>(ForeignSource.allElements());
        outside.removeAll(inputs.elements());
        uninvited = lines.stream().map(line -> line.map(one -> Disturbance.of(overlap.disturbing(one, outside)).stream()
            .filter(Disturbance::hardToFit).toList()).orElse(List.of())).toList();
        own = lines.stream().map(line -> line.map(this::ownDisturbances).orElse(List.of())).toList();
        beamError = beamError();
        films = new Films(this);
    }

    private boolean excited(Line line) {
        return line.overvoltage(inputs.beamEnergyKev()) > 1;
    }

    private List<Disturbance> ownDisturbances(Line line) {
        return material.massFraction(line.element()) > 0
            ? Disturbance.of(overlap.disturbing(line, material.massFractions())) : List.of();
    }

    /** Changes of log odds (down to, up to) of every element when the beam energy is off. */
    private double[][] beamError() {
        int n = lines.size();
        double[][] reach = new double[n][2];
        for (double error : new double[] {-BEAM_ERROR_KEV, BEAM_ERROR_KEV}) {
            double[] multipliers = new double[n];
            Arrays.fill(multipliers, 1);
            for (int i = 0; i < n; i++) {
                if (signals.get(i).isPresent()) {
                    double edge = signals.get(i).get().line().edgeEnergyKev();
                    double excess = inputs.beamEnergyKev() - edge;
                    multipliers[i] = Math.pow(Math.max(0, excess + error) / excess, INTENSITY_EXPONENT);
                }
            }
            for (int i = 0; i < n; i++) {
                double change = LogOdds.multiplied(inputs.nominal(), multipliers, i);
                reach[i][0] = Math.min(reach[i][0], change);
                reach[i][1] = Math.max(reach[i][1], change);
            }
        }
        return reach;
    }

    List<Element> elements() {
        return inputs.elements();
    }

    double[] nominal() {
        return inputs.nominal();
    }

    double[] massFractions() {
        return massFractions;
    }

    /** Amounts by mass, per mass of the alloy, as atoms per atom of it: log odds are counted in atoms. */
    double[] atoms(double[] amounts) {
        double mean = 0;
        for (int j = 0; j < amounts.length; j++) {
            mean += inputs.nominal()[j] * inputs.elements().get(j).atomicWeight();
        }
        double[] atoms = new double[amounts.length];
        for (int j = 0; j < atoms.length; j++) {
            atoms[j] = amounts[j] * mean / inputs.elements().get(j).atomicWeight();
        }
        return atoms;
    }

    Material material() {
        return material;
    }

    /** Density of the nominal alloy, g/cm³, where its elements' volumes give one. */
    OptionalDouble density() {
        return density;
    }

    double beamEnergyKev() {
        return inputs.beamEnergyKev();
    }

    double takeOffDeg() {
        return inputs.takeOffDeg();
    }

    ProfileCache profiles() {
        return profiles;
    }

    /** The line each element was read from; empty where no line can be used. */
    Optional<Line> line(int i) {
        return lines.get(i);
    }

    /** The same with its depth profile; empty where the beam does not excite it. */
    Optional<LineSignal> signal(int i) {
        return signals.get(i);
    }

    Films films() {
        return films;
    }

    /** Peaks of the alloy's own elements on an element's line, at nominal amounts. */
    List<Disturbance> ownDisturbances(int i) {
        return own.get(i);
    }

    /**
     * Peaks of elements that often come in unasked, within half a detector width of the line, at equal mass fractions.
     */
    List<Disturbance> uninvited(int i) {
        return uninvited.get(i);
    }

    /** Peaks of an element outside the alloy on an element's line, at equal mass fractions. */
    Optional<Disturbance> disturbance(int i, Element by) {
        return foreign.get(by, () -> {
            List<Optional<Disturbance>> found = new ArrayList<>();
            for (Optional<Line> line : lines) {
                found.add(line.flatMap(one ->
                    Disturbance.of(overlap.disturbing(one, List.of(by))).stream().findFirst()));
            }
            return List.copyOf(found);
        }).get(i);
    }

    /** How far an error of the beam energy can move an element's log odds in a direction; may be infinite. */
    double beamErrorReach(Shift shift) {
        return shift.up() ? beamError[shift.index()][1] : -beamError[shift.index()][0];
    }

    /** How far the tilt of these spots can move an element's log odds in a direction. */
    double tiltReach(Stance stance, Shift shift) {
        return tilts.get(stance, () -> TiltShifts.of(this, stance.range(inputs.takeOffDeg()))).reach(shift);
    }

    /**
     * How far it can move an element's log odds that the particle is thinner than the depth X-rays come from.
     *
     * <p>Once with the path out of a flat layer of that thickness, once with no absorption at all; not at all where a
     * flat layer holds practically all of every line's signal.
     */
    double thinReach(double diameterNm, Shift shift) {
        double[][] multipliers = thin.get(diameterNm, () -> thinMultipliers(material.massDepth(diameterNm)));
        double reach = 0;
        for (double[] own : multipliers) {
            reach = Math.max(reach, shift.direction() * LogOdds.multiplied(inputs.nominal(), own, shift.index()));
        }
        return reach;
    }

    private double[][] thinMultipliers(double massDepth) {
        double[] layer = new double[lines.size()];
        double[] unabsorbed = new double[layer.length];
        boolean thick = true;
        for (int i = 0; i < layer.length; i++) {
            Optional<LineSignal> signal = signals.get(i);
            layer[i] = signal.map(s -> s.profile().shareOfTop(massDepth, s.chi())).orElse(1.0);
            thick &= layer[i] >= WHOLE_SIGNAL;
            unabsorbed[i] = signal.map(s -> s.profile().shareOfTop(massDepth, 0)
                / s.profile().absorptionFactor(s.chi())).orElse(1.0);
        }
        return thick ? new double[0][] : new double[][] {layer, unabsorbed};
    }

    /** Share of a line's signal that comes from below a depth, were the alloy that thick; 0 without a line. */
    double shareBelow(int i, double depthNm) {
        return signals.get(i).map(s -> 1 - s.profile().shareOfTop(material.massDepth(depthNm), s.chi())).orElse(0.0);
    }

    /** How far it moves an element's log odds that the correction was made without elements that are there. */
    double leftOutReach(Map<Element, Double> missing, Shift shift) {
        double[] multipliers = leftOut.get(missing, () -> leftOutMultipliers(missing));
        return shift.direction() * LogOdds.multiplied(inputs.nominal(), multipliers, shift.index());
    }

    /** Emission of each line from the real material over that from the one the correction was made for. */
    private double[] leftOutMultipliers(Map<Element, Double> missing) {
        double gone = missing.values().stream().mapToDouble(Double::doubleValue).sum();
        SortedMap<Element, Double> whole = new TreeMap<>();
        material.massFractions().forEach((element, fraction) -> whole.put(element, fraction * (1 - gone)));
        missing.forEach((element, fraction) -> whole.merge(element, fraction, Double::sum));
        Material real = Material.of(whole, 1);
        double[] multipliers = new double[lines.size()];
        for (int i = 0; i < multipliers.length; i++) {
            multipliers[i] = signals.get(i).map(s -> {
                LineSignal there = LineSignal.of(s.line(), real, inputs.beamEnergyKev(), inputs.takeOffDeg(), profiles);
                return there.profile().emitted(there.chi()) / s.profile().emitted(s.chi());
            }).orElse(1.0);
        }
        return multipliers;
    }
}
