package surfeit.xray;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import surfeit.element.Element;

/**
 * Which peaks of other elements fall on an analytical line, for a detector and a beam energy.
 *
 * <pre>   r = |E1 - E2| / FWHM((E1 + E2)/2) </pre>
 *
 * Energies from the X-ray Data Booklet where it has both lines, else both from the full line list. A doublet stands
 * at its stronger member. A peak is reported from r below 1.5 on, if the beam excites it and it yields at least
 * {@link #LEAST_STRENGTH} of the disturbed line's counts: a line of a thousandth raises no alarm.
 * Sum and escape peaks are not considered. Immutable, thread-safe.
 */
public record LineOverlap(Resolution resolution, double beamEnergyKev) {
    /** One percent of the disturbed line's counts (judgement: below the usual error of a spot analysis). */
    public static final double LEAST_STRENGTH = 0.01;
    private static final double BOOKLET_SLACK_EV = 1;
    private static final double EV_PER_KEV = 1000;
    /** Wider than any shoulder: 1.5 times 390 eV, the width of a 300 eV detector at 30 keV, and a doublet's split. */
    private static final double NEAR_KEV = 0.8;

    public LineOverlap {
        BeamEnergy.check(beamEnergyKev);
    }

    /** Peaks of these elements that fall on the line, worst first; strengths at equal mass fractions. */
    public List<Overlap> disturbing(Line line, Collection<Element> others) {
        return disturbing(line, others, other -> 1);
    }

    /** The same within a known composition: strengths at its mass fractions, so that traces beside majors show. */
    public List<Overlap> disturbing(Line line, Map<Element, Double> massFractions) {
        double own = massFractions.getOrDefault(line.element(), 0.0);
        return own > 0 ? disturbing(line, massFractions.keySet(), other -> massFractions.get(other) / own)
            : disturbing(line, massFractions.keySet());
    }

    /** The line and one peak, whatever their separation; strength at equal mass fractions. */
    public Overlap between(Line line, Peak peak) {
        return between(target(line), peak, 1);
    }

    /** The disturbed line, looked up once for many peaks. */
    private record Target(Line line, Peak peak, OptionalDouble bookletKev, double strength) {
    }

    private Target target(Line line) {
        Peak peak = LineTable.standard().peakOf(line);
        return new Target(line, peak, BookletEnergies.standard().energyKev(peak.element(), peak.strongestMember()),
            peak.generatedStrength(beamEnergyKev));
    }

    private List<Overlap> disturbing(Line line, Collection<Element> others, ToDoubleFunction<Element> amount) {
        Target target = target(line);
        List<Overlap> found = new ArrayList<>();
        for (Element other : others) {
            if (other.equals(line.element())) {
                continue;
            }
            for (Peak peak : LineTable.standard().peaks(other)) {
                if (Math.abs(peak.energyKev() - line.energyKev()) > NEAR_KEV) {
                    continue;
                }
                Overlap overlap = between(target, peak, amount.applyAsDouble(other));
                if (overlap.severity() != OverlapSeverity.RESOLVED && overlap.relativeStrength() >= LEAST_STRENGTH) {
                    found.add(overlap);
                }
            }
        }
        found.sort(Overlap.WORST_FIRST);
        return List.copyOf(found);
    }

    private Overlap between(Target target, Peak peak, double amount) {
        OptionalDouble other = BookletEnergies.standard().energyKev(peak.element(), peak.strongestMember());
        boolean booklet = target.bookletKev().isPresent() && other.isPresent();
        double lineKev = booklet ? target.bookletKev().getAsDouble() : target.peak().energyKev();
        double peakKev = booklet ? other.getAsDouble() : peak.energyKev();
        double separation = Math.abs(lineKev - peakKev) * EV_PER_KEV;
        double fwhm = resolution.fwhmEv((lineKev + peakKev) / 2);
        double slack = booklet ? BOOKLET_SLACK_EV : Math.max(slackEv(target.peak()), slackEv(peak));
        boolean borderline = OverlapSeverity.of(Math.max(0, separation - slack) / fwhm)
            != OverlapSeverity.of((separation + slack) / fwhm);
        double disturbing = amount * peak.generatedStrength(beamEnergyKev);
        double strength = disturbing == 0 ? 0 : disturbing / target.strength();
        return new Overlap(target.line(), peak, separation, fwhm, separation / fwhm,
            OverlapSeverity.of(separation / fwhm), borderline, strength,
            booklet ? Overlap.EnergySource.BOOKLET : Overlap.EnergySource.LINE_LIST);
    }

    /** Worst difference of the line list from the booklet: K, La, Lb1 within 5 eV, M to 10 eV, other L more. */
    private static double slackEv(Peak peak) {
        return switch (peak.name()) {
            case "Ka", "Kb", "La", "Lb1" -> 4;
            default -> 10;
        };
    }
}
