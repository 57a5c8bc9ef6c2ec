package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;
import surfeit.composition.Alloy;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Basis;
import surfeit.composition.NominalText;
import surfeit.composition.SourceRead;
import surfeit.element.Element;
import surfeit.lab.Expectation;
import surfeit.lab.InputRevisions;
import surfeit.lab.Laboratory;
import surfeit.lab.ProblemException;
import surfeit.lab.Recount;
import surfeit.lab.Recounted;
import surfeit.lab.Segregation;
import surfeit.lab.SpotFilter;
import surfeit.lab.StoredSample;
import surfeit.lab.StoredSpot;
import surfeit.lab.SumsMark;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.blocks.RandomSpots;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Judgement;
import surfeit.spot.Sample;
import surfeit.spot.Spot;
import surfeit.spot.SpotCentre;

/**
 * Whatever is done to a sample on record, its answers are those of its spots: sums that are kept of them change
 * nothing. All values invented.
 */
class KeptSumsTest {
    private static final String NAME = "A7";
    private static final String ALLOY = "own-ag-cu-sn";

    /** One random history of a sample. */
    private static final class History {
        private final LabBench bench;
        private final Laboratory lab;
        private final Random random;
        private final RandomSpots invented;
        private final Map<InputRevisions, Object> earlier = new LinkedHashMap<>();
        private int sumsSeen;

        History(LabBench bench, long seed) {
            this.bench = bench;
            this.lab = bench.laboratory();
            this.random = new Random(seed);
            this.invented = new RandomSpots(seed);
            state("Ag:58,Cu:36,Sn:6");
            describe(0);
        }

        void step() {
            int kind = random.nextInt(20);
            if (kind < 7) {
                bench.post(NAME, invented.next(1 + random.nextInt(40)).toArray(Spot[]::new));
            } else if (kind < 12) {
                List<Spot> many = invented.next(257 + random.nextInt(600));
                if (random.nextInt(4) == 0) {
                    many.add(random.nextInt(many.size()), invented.onReference());
                }
                bench.post(NAME, many.toArray(Spot[]::new));
            } else if (kind < 14) {
                any().ifPresent(spot -> lab.correct(spot.id(), "misread", Expectation.NONE,
                    (present, sample) -> invented.again(present), LabBench.ANNA));
            } else if (kind < 16) {
                any().ifPresent(spot -> lab.withdraw(spot.id(), "charging", Expectation.NONE, LabBench.ANNA));
            } else if (kind < 17) {
                bench.post(NAME, invented.onReference(), invented.onReference(), invented.onReference());
            } else if (kind < 19) {
                describe(random.nextInt(5));
            } else {
                int silver = 50 + random.nextInt(8);
                state("Ag:" + silver + ",Cu:" + (94 - silver) + ",Sn:6");
            }
        }

        private Optional<StoredSpot> any() {
            List<StoredSpot> all = spots();
            return all.isEmpty() ? Optional.empty() : Optional.of(all.get(random.nextInt(all.size())));
        }

        private List<StoredSpot> spots() {
            List<StoredSpot> spots = new ArrayList<>();
            lab.forEachSpot(NAME, SpotFilter.ALL, spots::add);
            return spots.stream().filter(spot -> !spot.withdrawn()).toList();
        }

        private void describe(int kind) {
            Sample plain = Sample.of(Optional.of(ALLOY), Optional.empty());
            Judgement judgement = plain.judgement();
            Judgement median = new Judgement(judgement.marginOddsRatio(), judgement.alpha(), judgement.uLevel(),
                judgement.referenceCorrelation(), SpotCentre.MEDIAN);
            Sample.Geometry at15Kev = new Sample.Geometry(OptionalDouble.of(15), OptionalDouble.empty(),
                OptionalDouble.empty(), OptionalDouble.empty());
            Sample sample = new Sample(plain.alloy(), plain.nominal(), kind == 1 ? Set.of(Element.of("O")) : Set.of(),
                plain.accuracyClass(), plain.form(), kind == 2 ? at15Kev : plain.geometry(), plain.coating(), plain.mount(),
                kind == 3 ? median : judgement, plain.preparation(), plain.diffractionPhases(), "kind " + kind, kind == 4);
            long revision = bench.store().read(access -> access.sample(NAME).map(StoredSample::revision).orElse(0L));
            lab.describe(NAME, sample, revision == 0 ? Expectation.NONE : Expectation.revision(revision), LabBench.ANNA);
        }

        private void state(String nominal) {
            long revision = bench.store().read(access -> access.alloy(ALLOY).map(alloy -> alloy.revision()).orElse(0L));
            lab.defineAlloy(new Alloy(ALLOY, nominal, NominalText.parse(nominal, Basis.ATOMIC), Optional.empty(),
                "invented for a test", SourceRead.YES, AlloyCatalogue.packaged().require("ag-cu-eutectic").phases()),
                revision == 0 ? Expectation.NONE : Expectation.revision(revision), LabBench.ANNA);
        }

        void check(GroupBy by) {
            StoredSample stored = lab.sample(NAME);
            List<Spot> spots = spots().stream().map(StoredSpot::spot).toList();
            Object answer = answer(() -> lab.segregation(NAME, by));
            assertThat(answer).isEqualTo(answer(() -> lab.interpret(stored.sample(), SpotSource.of(spots), by)));
            if (by == GroupBy.FEATURE) {
                earlier.put(lab.inputRevisions(NAME), answer);
            }
            Map<GroupBy, SumsMark> marks = bench.store().read(access -> access.sumsMarks(stored));
            sumsSeen += marks.size();
            if (stored.spotCount() > 256 && stored.sample().judgement().spotCentre() == SpotCentre.MEAN) {
                assertThat(marks.keySet()).as("as soon as a change is on record").containsExactly(GroupBy.values());
                assertThat(marks.values()).allSatisfy(mark -> assertThat(stored.spotCount() - mark.spotCount())
                    .as("spots an answer reads").isLessThanOrEqualTo(256));
            }
        }

        void checkEarlier() {
            earlier.forEach((inputs, answer) ->
                assertThat(answer(() -> lab.segregation(NAME, inputs, GroupBy.FEATURE))).isEqualTo(answer));
        }

        void checkRecount() {
            List<Recounted> found = new ArrayList<>();
            bench.store().read(access -> {
                new Recount(AlloyCatalogue.packaged(), 0.003).ofAll(access, found::add);
                return found;
            });
            assertThat(found).allSatisfy(one ->
                assertThat(one.state()).isIn(Recounted.State.EQUAL, Recounted.State.NOT_KEPT));
        }
    }

    /** The answer, or why there is none: that too is the same with and without kept sums. */
    private static Object answer(Supplier<Segregation> question) {
        try {
            Interpretation answer = question.get().interpretation();
            return List.of(answer.groups(), answer.contrasts(), answer.caveats(), answer.depths(), answer.spotCount(),
                answer.particleCount(), answer.sessionCount());
        } catch (ProblemException e) {
            return e.problem();
        } catch (IllegalArgumentException e) {
            return e.getMessage();
        }
    }

    @Property(tries = 6)
    void after_any_history_the_answers_are_those_of_the_spots_to_the_last_bit(@ForAll long seed) throws IOException {
        for (RecordEngine engine : RecordEngine.values()) {
            Path folder = Files.createTempDirectory("kept-sums");
            try (LabBench bench = LabBench.in(engine, folder)) {
                answersAreThoseOfTheSpots(bench, seed);
            } finally {
                try (Stream<Path> all = Files.walk(folder)) {
                    all.sorted(Comparator.reverseOrder()).forEach(path -> path.toFile().delete());
                }
            }
        }
    }

    private static void answersAreThoseOfTheSpots(LabBench bench, long seed) {
        History history = new History(bench, seed);
        for (int step = 0; step < 14; step++) {
            history.step();
            history.check(GroupBy.values()[step % 3]);
            history.checkRecount();
        }
        history.checkEarlier();
        Statistics.label("histories with kept sums").collect(history.sumsSeen > 0)
            .coverage(coverage -> coverage.check(true).percentage(share -> share > 50));
    }
}
