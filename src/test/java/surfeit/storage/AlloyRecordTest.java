package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import surfeit.composition.Alloy;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.SourceRead;
import surfeit.lab.Change;
import surfeit.lab.EventFilter;
import surfeit.lab.Expectation;
import surfeit.lab.InputRevisions;
import surfeit.lab.LabEvent;
import surfeit.lab.Laboratory;
import surfeit.lab.Problem;
import surfeit.lab.StoredAlloy;

@OnBothEngines
class AlloyRecordTest {
    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;
    private LabBench bench;
    private Laboratory lab;

    @BeforeEach
    void open() {
        bench = LabBench.in(engine, folder);
        lab = bench.laboratory();
    }

    @AfterEach
    void close() {
        bench.close();
    }

    @Test
    void the_program_brings_its_alloys_at_revision_zero() {
        assertThat(lab.alloys()).hasSize(AlloyCatalogue.packaged().all().size())
            .allSatisfy(alloy -> assertThat(alloy.revision()).isZero());
        assertThat(lab.alloy(LabBench.AG_CU).alloy()).isEqualTo(AlloyCatalogue.packaged().require(LabBench.AG_CU));
        LabBench.assertRefused(() -> lab.alloy("unobtainium"), Problem.NOT_FOUND);
    }

    @Test
    void a_labs_own_alloy_is_recorded_with_who_and_when_and_grows_by_revisions() {
        Change<StoredAlloy> created = define(alloy("our-braze", 0.60), Expectation.NONE);
        LabBench.assertRefused(() -> define(alloy("our-braze", 0.61), Expectation.NONE), Problem.REVISION_REQUIRED);
        Change<StoredAlloy> changed = define(alloy("our-braze", 0.61), Expectation.revision(1));

        assertThat(created.kind()).isEqualTo(Change.Kind.CREATED);
        assertThat(changed.now()).isEqualTo(lab.alloy("our-braze"))
            .isEqualTo(new StoredAlloy(alloy("our-braze", 0.61), 2, Optional.of(LabBench.ANNA)));
        assertThat(define(alloy("our-braze", 0.61), Expectation.NONE).kind()).isEqualTo(Change.Kind.UNCHANGED);
        assertThat(lab.alloys()).extracting(alloy -> alloy.alloy().id()).isSorted().contains("our-braze");
        assertThat(lab.events(EventFilter.ALL, 0, 10)).extracting(LabEvent::type)
            .containsExactly(LabEvent.Type.ALLOY_CHANGED, LabEvent.Type.ALLOY_CHANGED);
    }

    @Test
    void restating_an_alloy_of_the_program_starts_from_revision_zero_and_goes_before_it() {
        LabBench.assertRefused(() -> define(alloy(LabBench.AG_CU, 0.6), Expectation.NONE), Problem.REVISION_REQUIRED);

        define(alloy(LabBench.AG_CU, 0.6), Expectation.revision(0));

        assertThat(lab.alloy(LabBench.AG_CU)).returns(1L, StoredAlloy::revision);
        assertThat(lab.alloys()).filteredOn(alloy -> alloy.alloy().id().equals(LabBench.AG_CU)).hasSize(1);
    }

    @Test
    void the_revisions_an_answer_is_made_from_grow_with_the_alloy_and_the_sample() {
        bench.describe("A7");
        InputRevisions first = lab.inputRevisions("A7");
        define(alloy(LabBench.AG_CU, 0.6), Expectation.revision(0));
        InputRevisions second = lab.inputRevisions("A7");
        bench.post("A7", LabBench.spot("P1-1", "78.8"));

        assertThat(List.of(first, second, lab.inputRevisions("A7"))).doesNotHaveDuplicates();
        assertThat(first.alloy()).hasValue(0);
        assertThat(second.alloy()).hasValue(1);
    }

    private Change<StoredAlloy> define(Alloy alloy, Expectation expectation) {
        return lab.defineAlloy(alloy, expectation, LabBench.ANNA);
    }

    private static Alloy alloy(String id, double silver) {
        return new Alloy(id, "Braze of our own", LabBench.nominal("Ag", silver, "Cu", 1 - silver), Optional.empty(),
            "invented for a test", SourceRead.YES, List.of());
    }
}
