package surfeit.segregation.sums;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.segregation.uncertainty.AdditiveFloor;
import surfeit.segregation.uncertainty.ReferenceCorrection;
import surfeit.segregation.uncertainty.SharedError;
import surfeit.spot.ReferencePiece;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/**
 * The reference spots of a sample, and which of them fit a group: same session, same beam energy, shared elements.
 *
 * <p>Of several pieces that fit, the one of the particles' own material is taken, else the one with most spots.
 */
public final class References {
    private final List<Spot> spots;
    private final Sample sample;
    private final double floorMassFraction;
    private final double defaultLimit;

    public References(List<Spot> spots, Sample sample, double floorMassFraction, double defaultLimit) {
        this.spots = List.copyOf(spots);
        this.sample = sample;
        this.floorMassFraction = floorMassFraction;
        this.defaultLimit = defaultLimit;
    }

    /** What reference spots can do for a group: a correction, or in words why there is none. */
    public record Offer(Optional<ReferenceCorrection> correction, String explanation, int spotCount) {
        /** True where the sample has reference spots, whether or not they fit. */
        boolean isAsked() {
            return correction.isPresent() || !explanation.isEmpty();
        }
    }

    boolean isEmpty() {
        return spots.isEmpty();
    }

    /** The correction for a group closed over these elements. */
    Offer offer(List<Element> elements, GroupKey key) {
        List<Spot> sameSession = spots.stream().filter(spot -> spot.session().equals(key.session())).toList();
        if (sameSession.isEmpty()) {
            return refused("The reference spots are of another session (" + listed(spots, References::sessionWords)
                + "); those of this group are of " + words(key.session()) + ".");
        }
        List<Spot> fitting = sameSession.stream().filter(spot -> energy(spot).equals(key.beamEnergyKev())).toList();
        if (fitting.isEmpty()) {
            return refused("The reference spots of this session are of another beam energy ("
                + listed(sameSession, spot -> energyWords(energy(spot))) + "); those of this group are of "
                + energyWords(key.beamEnergyKev()) + ".");
        }
        List<Spot> piece = bestPiece(fitting);
        return correction(piece, elements);
    }

    private static Offer refused(String explanation) {
        return new Offer(Optional.empty(), explanation, 0);
    }

    private static String listed(List<Spot> spots, Function<Spot, String> words) {
        return spots.stream().map(words).distinct().collect(Collectors.joining(", "));
    }

    private static String sessionWords(Spot spot) {
        return words(spot.session());
    }

    private static String words(Optional<String> session) {
        return session.map(name -> "\"" + name + "\"").orElse("no stated session");
    }

    private static String energyWords(Optional<Double> energy) {
        return energy.map(kev -> String.format(Locale.ROOT, "%s keV", kev == Math.rint(kev)
            ? String.valueOf(Math.round(kev)) : kev.toString())).orElse("unstated energy");
    }

    private static String symbols(Collection<Element> elements) {
        return elements.stream().map(Element::symbol).collect(Collectors.joining(", "));
    }

    private Optional<Double> energy(Spot spot) {
        return spot.conditions().beamEnergyKev().isPresent()
            ? Optional.of(spot.conditions().beamEnergyKev().getAsDouble())
            : sample.geometry().beamEnergyKev().stream().boxed().findFirst();
    }

    private static List<Spot> bestPiece(List<Spot> fitting) {
        Map<ReferencePiece, List<Spot>> pieces = new LinkedHashMap<>();
        fitting.forEach(spot -> spot.reference().ifPresent(piece ->
            pieces.computeIfAbsent(piece, p -> new ArrayList<>()).add(spot)));
        return pieces.entrySet().stream()
            .max((a, b) -> a.getKey().sameMaterial() != b.getKey().sameMaterial()
                ? Boolean.compare(a.getKey().sameMaterial(), b.getKey().sameMaterial())
                : Integer.compare(a.getValue().size(), b.getValue().size()))
            .map(Map.Entry::getValue).orElse(List.of());
    }

    private Offer correction(List<Spot> piece, List<Element> elements) {
        ReferencePiece reference = piece.get(0).reference().orElseThrow();
        NominalFractions truth = reference.trueComposition().resolve();
        Set<Element> foreign = new TreeSet<>(truth.elements());
        foreign.removeAll(Set.copyOf(elements));
        if (foreign.size() == truth.size()) {
            return refused("The reference piece (" + symbols(truth.elements()) + ") shares no element with the group ("
                + symbols(elements) + ").");
        }
        NominalFractions shared = truth.without(foreign);
        double[] trueFractions = new double[elements.size()];
        double[] certificate = new double[elements.size()];
        for (int i = 0; i < trueFractions.length; i++) {
            int at = shared.elements().indexOf(elements.get(i));
            if (at >= 0) {
                trueFractions[i] = shared.middle(at);
                certificate[i] = trueFractions[i] > 0 ? shared.standardUncertainty(at) / trueFractions[i] : 0;
            }
        }
        return build(piece, elements, reference, trueFractions, certificate);
    }

    private Offer build(List<Spot> piece, List<Element> elements, ReferencePiece reference, double[] trueFractions,
                        double[] certificate) {
        SpotParts parts = new SpotParts(elements, defaultLimit, true);
        List<double[]> closed = new ArrayList<>();
        List<double[]> uncertainties = new ArrayList<>();
        for (Spot spot : piece) {
            parts.read(spot);
            if (parts.isClosable()) {
                double[] fractions = new double[elements.size()];
                parts.close(false, fractions);
                closed.add(fractions);
                if (parts.hasUncertainty) {
                    uncertainties.add(closedUncertainties(parts, fractions));
                }
            }
        }
        if (closed.isEmpty()) {
            return refused("No reference spot reports more than nothing of " + symbols(elements) + ".");
        }
        Optional<double[][]> stated = uncertainties.size() == closed.size()
            ? Optional.of(uncertainties.toArray(double[][]::new)) : Optional.empty();
        double[] weights = elements.stream().mapToDouble(Element::atomicWeight).toArray();
        Optional<ReferenceCorrection> correction = ReferenceCorrection.of(closed.toArray(double[][]::new), stated,
            trueFractions, certificate, sample.judgement().referenceCorrelation(),
            AdditiveFloor.ofMass(floorMassFraction, weights), reference.sameMaterial());
        return new Offer(correction, correction.isPresent() ? "" : "Fewer than two of " + symbols(elements)
            + " are in the reference piece and measured there to better than a fifth; two are needed to correct with.",
            closed.size());
    }

    private static double[] closedUncertainties(SpotParts parts, double[] closed) {
        double[] errors = Arrays.stream(parts.uncertainties).map(uncertainty -> uncertainty / parts.sum()).toArray();
        double[] result = new double[closed.length];
        SharedError.close(errors, closed, result);
        return result;
    }
}
