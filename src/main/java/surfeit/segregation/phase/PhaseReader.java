package surfeit.segregation.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import surfeit.element.Element;
import surfeit.segregation.answer.ForeignElement;
import surfeit.segregation.answer.PhaseReading;
import surfeit.segregation.answer.SpotSpread;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.nominal.NominalTest;
import surfeit.segregation.sums.PhaseField;
import surfeit.segregation.sums.TieLine;
import surfeit.segregation.uncertainty.GroupRuns;
import surfeit.segregation.uncertainty.SharedError;
import surfeit.statistics.RandomPart;

/**
 * Reads the groups of one answer against the phases of their alloy.
 *
 * <pre>
 *     two clusters of spots at two phases            one phase or the other
 *     nothing tells the scatter                      cannot tell
 *     one phase not excluded, at least half of it    one phase
 *     several phases not excluded                    cannot tell
 *     none, between two phases and on their line     mixture (of three, where no two will do)
 *     none, else                                     neither
 * </pre>
 * Where much of what the spots report lies outside the nominal, as in a compound with the base of a joint: cannot tell.
 * Phases and lines are asked about the measured particles; the shares that are told, and the bound of what makes up
 * nearly all, hold for particles of the kind from three on, as the group's row does.
 *
 * <p>A phase is excluded where its p, times the number of groups, is at most alpha: in 95 of 100 answers (at alpha 0.05)
 * no group loses the phase it is. A mixture whose few spots scatter over half the tie line or more is not told.
 */
public final class PhaseReader {
    /** A group is called one phase only if at least this share of its atoms is. Judgement. */
    private static final double MOSTLY = 0.5;
    /** From this lower bound on the main element is given with it. Judgement. */
    private static final double NEARLY_PURE = 0.9;
    /** From so many particles on an answer speaks about particles of the kind. */
    private static final int OF_KIND = 3;

    private final int groups;
    private final double alpha;

    /**
     * @param groups how many groups the answer has
     * @param alpha  risk of a false statement, over all groups
     */
    public PhaseReader(int groups, double alpha) {
        this.groups = groups;
        this.alpha = alpha;
    }

    /**
     * The reading of a group; empty where no known phase is made of its elements.
     *
     * @param strangers elements outside the nominal that make up much of what its spots report: what such a spot is, the
     *                  nominal's elements alone do not tell, and no phase read here holds another
     */
    public Optional<PhaseReading> read(GroupAnalysis analysis, List<ForeignElement> strangers) {
        if (analysis.data().phases().fields().isEmpty()) {
            return Optional.empty();
        }
        boolean repeated = analysis.theseTests().isPresent();
        NominalTest[] tests = analysis.theseTests().orElse(analysis.tests());
        GroupRuns runs = repeated ? analysis.particles() : analysis.units();
        PhaseReading reading = new OneGroup(analysis, runs, tests).read();
        return Optional.of(strangers.isEmpty() ? reading : beside(reading, strangers));
    }

    private static PhaseReading beside(PhaseReading reading, List<ForeignElement> strangers) {
        List<Element> heldByNone = new ArrayList<>(reading.heldByNone());
        strangers.forEach(found -> heldByNone.add(found.element()));
        return new PhaseReading(PhaseReading.Kind.CANNOT_TELL, reading.phases(), reading.tieLine(), List.of(), heldByNone,
            Optional.empty(), PhaseWords.beside(reading.phases(), strangers));
    }

    /** One group being read. */
    private final class OneGroup {
        private final GroupAnalysis analysis;
        private final GroupRuns runs;
        private final NominalTest[] tests;
        private final boolean scatterKnown;
        private final boolean ofKind;
        private final double[] mean;
        private final List<PhaseReading.Fit> fits = new ArrayList<>();
        private final List<TieLineFit> lines = new ArrayList<>();
        private final List<SpotSpread> spreads = new ArrayList<>();

        OneGroup(GroupAnalysis analysis, GroupRuns runs, NominalTest[] tests) {
            this.analysis = analysis;
            this.runs = runs;
            this.tests = tests;
            this.mean = runs.mean();
            this.scatterKnown = !tests[0].parts().isEmpty();
            this.ofKind = analysis.units().first().particleCount() >= OF_KIND;
            PhaseFits test = new PhaseFits(runs, analysis.comparison(), tests);
            for (PhaseField field : analysis.data().phases().fields()) {
                double p = Math.min(1, groups * test.pValue(field));
                fits.add(new PhaseReading.Fit(field.phase(), p > alpha,
                    scatterKnown ? OptionalDouble.of(p) : OptionalDouble.empty()));
            }
            for (TieLine line : analysis.data().phases().lines()) {
                spreads.add(analysis.data().phases().spread(lines.size(), analysis.referenceUsed()));
                lines.add(TieLineFit.of(line, runs, mean, analysis.comparison(), tests));
            }
        }

        PhaseReading read() {
            for (int i = 0; i < lines.size(); i++) {
                if (spread(i).clusters().filter(SpotSpread.Clusters::atBothPhases).isPresent()) {
                    return reading(PhaseReading.Kind.ONE_OR_THE_OTHER, OptionalInt.of(i));
                }
            }
            List<String> fitting = PhaseReading.namesOf(fits);
            if (!scatterKnown || fitting.size() > 1) {
                return reading(PhaseReading.Kind.CANNOT_TELL, nearest());
            }
            return fitting.size() == 1 ? onePhase(fitting.get(0)) : betweenPhases();
        }

        private PhaseReading onePhase(String name) {
            OptionalInt line = OptionalInt.empty();
            double mostOther = -1;
            for (int i = 0; i < lines.size(); i++) {
                TieLineFit fit = lines.get(i);
                boolean first = fit.line().from().name().equals(name);
                if ((first || fit.line().to().name().equals(name)) && fit.mostOf(first) > mostOther) {
                    mostOther = fit.mostOf(first);
                    line = OptionalInt.of(i);
                }
            }
            boolean told = mostOther <= 1 - MOSTLY && line.stream().noneMatch(this::unclear);
            return reading(told ? PhaseReading.Kind.ONE_PHASE : PhaseReading.Kind.CANNOT_TELL, line);
        }

        /** In a binary the shortest line that holds the group joins neighbours. */
        private PhaseReading betweenPhases() {
            OptionalInt line = OptionalInt.empty();
            for (int i = 0; i < lines.size(); i++) {
                TieLineFit own = lines.get(i);
                boolean shorter = line.isEmpty() || own.line().length() < lines.get(line.getAsInt()).line().length();
                if (shorter && own.liesOn(alpha / groups)) {
                    line = OptionalInt.of(i);
                }
            }
            if (line.isPresent()) {
                return reading(unclear(line.getAsInt()) ? PhaseReading.Kind.CANNOT_TELL : PhaseReading.Kind.MIXTURE,
                    line);
            }
            List<PhaseReading.MassShare> three = ofThree();
            return three.isEmpty() ? reading(PhaseReading.Kind.NEITHER, nearest())
                : reading(PhaseReading.Kind.MIXTURE, OptionalInt.empty(), three);
        }

        private List<PhaseReading.MassShare> ofThree() {
            if (mean.length < 3) {
                return List.of();
            }
            SharedError shared = analysis.comparison().shared(mean);
            double[] uncertainty = new double[mean.length];
            for (int i = 0; i < mean.length; i++) {
                double random = 0;
                for (RandomPart part : tests[i].parts()) {
                    random = Math.max(random, part.standardError());
                }
                uncertainty[i] = Math.hypot(shared.linear(i), random);
            }
            return ThreePhases.of(mean, uncertainty, analysis.data().phases().fields())
                .map(ThreePhases::ofMass).orElse(List.of());
        }

        private boolean unclear(int line) {
            return spread(line).pattern() == SpotSpread.Pattern.CANNOT_TELL;
        }

        private SpotSpread spread(int line) {
            return spreads.get(line);
        }

        private OptionalInt nearest() {
            OptionalInt nearest = OptionalInt.empty();
            for (int i = 0; i < lines.size(); i++) {
                boolean nearer = nearest.isEmpty()
                    || TieLineFit.NEAREST.compare(lines.get(i), lines.get(nearest.getAsInt())) < 0;
                nearest = nearer ? OptionalInt.of(i) : nearest;
            }
            return nearest;
        }

        private PhaseReading reading(PhaseReading.Kind kind, OptionalInt line) {
            return reading(kind, line, List.of());
        }

        private PhaseReading reading(PhaseReading.Kind kind, OptionalInt line, List<PhaseReading.MassShare> three) {
            Optional<PhaseReading.OnTieLine> onLine = line.isEmpty() ? Optional.empty()
                : Optional.of(told(lines.get(line.getAsInt()))
                .reading(analysis.comparison().nominal().middles(), spread(line.getAsInt())));
            Optional<PhaseReading.AtLeast> main = mainElement();
            List<Element> heldByNone = heldByNone();
            return new PhaseReading(kind, fits, onLine, three, heldByNone, main,
                new PhaseWords(kind, fits, onLine, three, heldByNone, main).sentence(scatterKnown));
        }

        /** The fit whose interval is told: that of the scope the group's row speaks about. */
        private TieLineFit told(TieLineFit fit) {
            return ofKind ? TieLineFit.ofKind(fit.line(), analysis.units(), analysis.comparison(), analysis.tests()) : fit;
        }

        private List<Element> heldByNone() {
            return analysis.data().elements().stream().filter(element -> fits.stream()
                .allMatch(fit -> fit.phase().atomicFractions().getOrDefault(element, 0.0) == 0)).toList();
        }

        private Optional<PhaseReading.AtLeast> mainElement() {
            for (int i = 0; i < mean.length; i++) {
                double low = (ofKind ? analysis.tests() : tests)[i].low();
                if (scatterKnown && low >= NEARLY_PURE) {
                    return Optional.of(new PhaseReading.AtLeast(analysis.data().elements().get(i), low));
                }
            }
            return Optional.empty();
        }
    }
}
