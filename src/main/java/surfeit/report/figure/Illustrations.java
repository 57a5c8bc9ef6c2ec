package surfeit.report.figure;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import surfeit.composition.NominalFractions;
import surfeit.composition.Phase;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.blocks.SpotSource;
import surfeit.segregation.screening.SpotReading;
import surfeit.segregation.screening.SpotScreening;
import surfeit.spot.Sample;
import surfeit.xray.BeamEnergy;
import surfeit.xray.Material;
import surfeit.xray.ProfileCache;
import surfeit.xray.SignalDepthQuery;
import surfeit.xray.SignalDepths;

/**
 * What is drawn beside the answer itself.
 *
 * @param spots  the spots of the sample, if they are to be drawn
 * @param phases phases the alloy may be made of; none known is an empty list
 * @param depths where the signal of the alloy comes from, if the beam energy is known
 */
public record Illustrations(Optional<SpotPoints> spots, List<Phase> phases, Optional<SignalDepths> depths) {
    /** The answer's own figures only. */
    public static final Illustrations NONE = new Illustrations(Optional.empty(), List.of(), Optional.empty());

    public Illustrations {
        phases = List.copyOf(phases);
    }

    /**
     * Gathers what the wanted figures need.
     *
     * @param source   the spots the answer was made from; read twice where spots are wanted
     * @param profiles keeps the physics of alloys seen
     * @param beside   takes the reading of every spot too, where spots are wanted
     */
    public static Illustrations of(Set<AnswerFigure> wanted, Interpretation interpretation, Sample sample,
                                   List<Phase> phases, SpotSource source, ProfileCache profiles,
                                   Consumer<SpotReading> beside) {
        Optional<SpotPoints> spots = Optional.empty();
        if (wanted.contains(AnswerFigure.SPOTS)) {
            SpotPoints points = new SpotPoints(interpretation.nominalFractions());
            new SpotScreening(sample, interpretation.nominal(), source,
                interpretation.settings().detectionLimitMassFraction()).forEach(source, reading -> {
                    points.accept(reading);
                    beside.accept(reading);
                });
            spots = Optional.of(points);
        }
        return new Illustrations(spots, phases, wanted.contains(AnswerFigure.DEPTHS)
            ? depths(interpretation, sample, profiles) : Optional.empty());
    }

    /** The figures there are to draw. */
    public Set<AnswerFigure> figures(Interpretation interpretation) {
        EnumSet<AnswerFigure> figures = EnumSet.of(AnswerFigure.FACTORS);
        spots.ifPresent(drawn -> figures.add(AnswerFigure.SPOTS));
        depths.ifPresent(drawn -> figures.add(AnswerFigure.DEPTHS));
        if (!interpretation.contrasts().isEmpty()) {
            figures.add(AnswerFigure.CONTRASTS);
        }
        return figures;
    }

    /**
     * A figure of the answer; empty where there is nothing to draw: contrasts without two groups, depths without a beam
     * energy or a density.
     *
     * @param subject what was measured, {@code Sample A7}
     */
    public Optional<Figure> draw(AnswerFigure figure, Interpretation interpretation, String subject) {
        return switch (figure) {
            case FACTORS -> Optional.of(FactorFigure.of(interpretation, subject));
            case SPOTS -> spots.map(points -> SpotFigure.of(points, phases, subject));
            case CONTRASTS -> interpretation.contrasts().isEmpty() ? Optional.empty()
                : Optional.of(ContrastFigure.of(interpretation, subject));
            case DEPTHS -> depths.map(all -> DepthFigure.of(all, subject));
        };
    }

    /** The same in as many figures as it takes printed pages; an empty list where there is nothing to draw. */
    public List<Figure> pages(AnswerFigure figure, Interpretation interpretation, String subject) {
        return switch (figure) {
            case FACTORS -> FactorFigure.pages(interpretation, subject);
            case SPOTS -> spots.map(points -> SpotFigure.pages(points, phases, subject)).orElse(List.of());
            case CONTRASTS -> interpretation.contrasts().isEmpty() ? List.of()
                : ContrastFigure.pages(interpretation, subject);
            case DEPTHS -> draw(figure, interpretation, subject).stream().toList();
        };
    }

    private static Optional<SignalDepths> depths(Interpretation interpretation, Sample sample, ProfileCache profiles) {
        List<Double> energies = interpretation.groups().stream()
            .flatMapToDouble(group -> group.beamEnergyKev().stream())
            .filter(BeamEnergy::holds).distinct().sorted().limit(DepthFigure.MOST_PANELS).boxed().toList();
        NominalFractions nominal = interpretation.nominalFractions();
        Optional<Material> material = Material.byVolumesIfKnown(Material.massFractions(nominal.elements(),
            nominal.middles()));
        if (energies.isEmpty() || material.isEmpty()) {
            return Optional.empty();
        }
        SignalDepthQuery usual = SignalDepthQuery.of(material.get(), energies);
        SignalDepthQuery asked = new SignalDepthQuery(material.get(), energies,
            sample.geometry().takeOffAngleDeg().orElse(usual.takeOffDeg()), 0, 0, usual.resolution(), 0,
            usual.others());
        return Optional.of(SignalDepths.of(asked, profiles));
    }
}
