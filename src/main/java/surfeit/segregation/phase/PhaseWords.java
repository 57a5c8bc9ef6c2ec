package surfeit.segregation.phase;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import surfeit.element.Element;
import surfeit.segregation.answer.Estimate;
import surfeit.segregation.answer.Figures;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.PhaseReading;
import surfeit.segregation.answer.SpotSpread;

/** Says what a group shows of its phases in a sentence or two. */
record PhaseWords(PhaseReading.Kind kind, List<PhaseReading.Fit> fits, Optional<PhaseReading.OnTieLine> line,
                  List<PhaseReading.MassShare> three, List<Element> heldByNone, Optional<PhaseReading.AtLeast> main) {
    private static final String ALIKE =
        " A mixture finer than the X-ray source, a patch of one phase smaller than it, and one homogeneous phase of that "
            + "composition read alike.";

    String sentence(boolean scatterKnown) {
        String words = switch (kind) {
            case ONE_PHASE -> onePhase(fitting().get(0));
            case MIXTURE -> line.map(this::mixture).orElseGet(this::mixtureOfThree);
            case ONE_OR_THE_OTHER -> oneOrTheOther(line.orElseThrow());
            case NEITHER -> neither();
            case CANNOT_TELL -> scatterKnown ? cannotTell() : scatterUnknown();
        };
        return main.map(bound -> words + " At least " + atLeast(bound.atomicFraction()) + " at% " + bound.element()
            + " (95 % bound); nothing more is said of its purity.").orElse(words);
    }

    /** For spots that are made of something else in good part. */
    static String beside(List<PhaseReading.Fit> fits, List<ForeignElement> strangers) {
        String symbols = strangers.stream().map(found -> found.element().symbol()).collect(Collectors.joining(" and "));
        double share = strangers.stream().mapToDouble(ForeignElement::mean).sum();
        return "None of " + names(fits) + " holds " + symbols + ", " + percent(share) + " at% of everything reported: a phase "
            + "with " + symbols + " that is not among these, or " + symbols + " from beneath or beside the spot.";
    }

    private List<String> fitting() {
        return PhaseReading.namesOf(fits);
    }

    private static String names(List<PhaseReading.Fit> fits) {
        Set<String> names = new LinkedHashSet<>();
        fits.forEach(fit -> names.add(fit.phase().name()));
        return String.join(", ", names);
    }

    private String onePhase(String name) {
        String share = line.map(on -> {
            boolean second = on.to().name().equals(name);
            double own = second ? on.shareOfAtoms().low() : 1 - on.shareOfAtoms().high();
            return own >= 1 ? "" : " At least " + atLeast(own) + " % of its atoms are that phase; the rest may be "
                + (second ? on.from() : on.to()).name() + ".";
        }).orElse("");
        return "Fits " + name + " and no other known phase." + share
            + " A spot smaller than the phases measures one phase, not the alloy: it differs from nominal without any "
            + "segregation.";
    }

    private String mixture(PhaseReading.OnTieLine on) {
        Estimate mass = on.shareOfMass();
        String nominal = on.nominal().map(share -> "; an alloy of nominal composition would hold "
            + percent(share.ofMass()) + " %").orElse("");
        String range = on.spots().pattern() == SpotSpread.Pattern.SPREAD ? " Single spots lie anywhere from "
            + Figures.fixed(on.spots().lowest(), 2) + " to " + Figures.fixed(on.spots().highest(), 2)
            + " of the way; each took in another share of both." : "";
        return "Lies between " + on.from().name() + " and " + on.to().name() + ": " + percent(mass.value())
            + " % of its mass (" + percent(mass.low()) + " to " + percent(mass.high()) + " %) would be "
            + on.to().name() + nominal + "." + range + ALIKE;
    }

    private String mixtureOfThree() {
        String shares = three.stream().map(share -> percent(share.ofMass()) + " % of its mass " + share.phase().name())
            .collect(Collectors.joining(", "));
        return "Fits no mixture of two known phases; a mixture of three would read so: about " + shares + "." + ALIKE;
    }

    private static String oneOrTheOther(PhaseReading.OnTieLine on) {
        SpotSpread.Clusters clusters = on.spots().clusters().orElseThrow();
        return "The spots fall into two clusters, " + clusters.lowerCount() + " at " + on.from().name() + " and "
            + clusters.upperCount() + " at " + on.to().name() + ": the beam hit one phase or the other. Their mean is "
            + "the composition of neither, and how many spots lie at a phase is no measure of how much of it there is.";
    }

    private String neither() {
        String where = line.map(on -> on.position().value() < 0 ? " It lies beyond " + on.from().name() + "."
            : on.position().value() > 1 ? " It lies beyond " + on.to().name() + "."
            : " It lies " + percent(on.beside()) + " at% beside the line between " + on.from().name() + " and "
                + on.to().name() + ".").orElse("");
        String none = "Fits none of " + names(fits) + (line.isPresent() ? " and no mixture of them." : ".");
        return heldByNone.isEmpty() ? none + where : none + " None of these phases holds "
            + heldByNone.stream().map(Element::symbol).collect(Collectors.joining(" or ")) + ".";
    }

    private String scatterUnknown() {
        List<String> fitting = fitting();
        return "Nothing tells the scatter, so no phase can be excluded; repeat the spot or give its uncertainty."
            + (fitting.isEmpty() ? " The calibration error alone would fit none of " + names(fits) + "."
                : " The calibration error alone would leave " + String.join(" or ", fitting) + ".");
    }

    private String cannotTell() {
        List<String> fitting = fitting();
        Optional<PhaseReading.OnTieLine> scattered =
            line.filter(on -> on.spots().pattern() == SpotSpread.Pattern.CANNOT_TELL);
        if (scattered.isPresent()) {
            return scattered(scattered.get());
        }
        return fitting.size() > 1 ? "May be " + String.join(" or ", fitting) + "; the uncertainty covers all of these."
            : "May be " + fitting.get(0) + ", but also a mixture that is mostly another phase.";
    }

    private static String scattered(PhaseReading.OnTieLine on) {
        SpotSpread spots = on.spots();
        return spots.spots() + " spots lie from " + Figures.fixed(spots.lowest(), 2) + " to "
            + Figures.fixed(spots.highest(), 2) + " of the way from " + on.from().name() + " to " + on.to().name()
            + " ("
            + spots.atFrom() + " at the first, " + spots.atTo()
            + " at the second); too few to tell whether the beam hit "
            + "one phase or the other, or mixtures of both.";
    }

    static String percent(double fraction) {
        return Figures.of(fraction * 100, 3);
    }

    /** A lower bound is rounded down. */
    private static String atLeast(double fraction) {
        return Figures.fixed(Math.floor(fraction * 1000) / 10, 1);
    }
}
