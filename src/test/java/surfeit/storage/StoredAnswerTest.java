package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import surfeit.composition.Alloy;
import surfeit.composition.SourceRead;
import surfeit.element.Element;
import surfeit.lab.Expectation;
import surfeit.lab.InputRevisions;
import surfeit.lab.Laboratory;
import surfeit.lab.Problem;
import surfeit.lab.Segregation;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

@OnBothEngines
class StoredAnswerTest {
    private static final Spot[] SPOTS = LabBench.spots("P", 12);

    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;
    private LabBench bench;
    private Laboratory lab;

    @BeforeEach
    void open() {
        bench = LabBench.in(engine, folder).describe("A7");
        lab = bench.laboratory();
    }

    @AfterEach
    void close() {
        bench.close();
    }

    @Test
    void spots_on_record_and_the_same_spots_in_the_question_get_the_same_answer() {
        bench.post("A7", SPOTS);

        Segregation stored = lab.segregation("A7", GroupBy.FEATURE);
        Segregation asked = lab.interpret(LabBench.agCuSample(), SpotSource.of(List.of(SPOTS)), GroupBy.FEATURE);

        assertThat(stored.interpretation().groups()).isEqualTo(asked.interpretation().groups()).hasSize(1);
        assertThat(stored.alloy()).isEqualTo(asked.alloy()).map(alloy -> alloy.alloy().id()).contains(LabBench.AG_CU);
        assertThat(stored.stored()).contains(lab.sample("A7"));
        assertThat(asked.stored()).isEmpty();
    }

    @Test
    void an_answer_can_be_made_again_from_its_revisions_after_spots_and_alloy_changed() {
        bench.post("A7", SPOTS);
        InputRevisions then = lab.inputRevisions("A7");
        Segregation before = lab.segregation("A7", GroupBy.FEATURE);
        bench.post("A7", LabBench.spots("Q", 5));
        lab.correct("spt_0001", "misread", Expectation.NONE,
            (spot, sample) -> LabBench.spot("P0", "10"), LabBench.ANNA);
        lab.withdraw("spt_0002", "charging", Expectation.NONE, LabBench.ANNA);
        lab.defineAlloy(new Alloy(LabBench.AG_CU, "Restated", LabBench.nominal("Ag", 0.2, "Cu", 0.8), Optional.empty(),
            "invented for a test", SourceRead.YES, List.of()), Expectation.revision(0), LabBench.ANNA);

        Segregation again = lab.segregation("A7", then, GroupBy.FEATURE);
        Segregation now = lab.segregation("A7", GroupBy.FEATURE);

        assertThat(again.interpretation().groups()).isEqualTo(before.interpretation().groups());
        assertThat(now.interpretation().groups()).isNotEqualTo(before.interpretation().groups());
        assertThat(now.interpretation().spotCount()).isEqualTo(16);
        LabBench.assertRefused(() -> lab.segregation("A7", new InputRevisions(99, then.alloy()), GroupBy.FEATURE),
            Problem.NOT_FOUND);
    }

    @Test
    void the_samples_own_nominal_goes_before_its_alloy() {
        Sample own = Sample.of(Optional.of(LabBench.AG_CU), Optional.of(LabBench.nominal("Ag", 0.25, "Cu", 0.75)));

        Segregation answer = lab.interpret(own, SpotSource.of(List.of(SPOTS)), GroupBy.FEATURE);

        assertThat(answer.alloy()).isEmpty();
        assertThat(answer.interpretation().nominal()).isEqualTo(LabBench.nominal("Ag", 0.25, "Cu", 0.75));
        assertThat(verdictOfCopper(answer)).isNotEqualTo(
            verdictOfCopper(lab.interpret(LabBench.agCuSample(), SpotSource.of(List.of(SPOTS)), GroupBy.FEATURE)));
    }

    private static Verdict verdictOfCopper(Segregation answer) {
        return answer.interpretation().groups().get(0).elements().stream()
            .filter(finding -> finding.element().equals(Element.of("Cu"))).findFirst().orElseThrow()
            .outcome().verdict();
    }

    @Test
    void fewer_than_two_elements_to_compare_are_refused() {
        Sample silverOnly = new Sample(Optional.of(LabBench.AG_CU), Optional.empty(), Set.of(Element.of("Cu")),
            LabBench.agCuSample().accuracyClass(), LabBench.agCuSample().form(), Sample.Geometry.UNKNOWN,
            Optional.empty(), Optional.empty(), LabBench.agCuSample().judgement(), List.of(), List.of(), "", false);

        LabBench.assertRefused(() -> lab.interpret(silverOnly, SpotSource.of(List.of(SPOTS)), GroupBy.FEATURE),
            Problem.TOO_FEW_ELEMENTS);
    }

    @Test
    void an_alloy_nobody_knows_is_refused_on_record_and_in_the_question_even_beside_a_nominal() {
        Sample both = Sample.of(Optional.of("no-such"), Optional.of(LabBench.nominal("Ag", 0.25, "Cu", 0.75)));

        for (Sample sample : List.of(both, Sample.of(Optional.of("no-such"), Optional.empty()))) {
            LabBench.assertRefused(() -> lab.interpret(sample, SpotSource.of(List.of(SPOTS)), GroupBy.FEATURE),
                Problem.ALLOY_UNKNOWN);
            LabBench.assertRefused(() -> lab.describe("B1", sample, Expectation.NONE, LabBench.ANNA),
                Problem.ALLOY_UNKNOWN);
        }
    }
}
