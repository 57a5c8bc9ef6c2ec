package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.composition.Alloy;
import surfeit.composition.AlloyCatalogue;
import surfeit.lab.Expectation;
import surfeit.lab.ImportOptions;
import surfeit.lab.Laboratory;
import surfeit.lab.PublicId;
import surfeit.lab.Recount;
import surfeit.lab.Recounted;
import surfeit.lab.Store;
import surfeit.lab.StoredSample;
import surfeit.lab.SumsMark;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.blocks.GrowingSums;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Spot;

/** When sums are kept of a sample's spots, go on, are forgotten, and what becomes of damaged ones. */
class SumsUpkeepTest {
    @TempDir
    Path folder;
    private LabBench bench;
    private Laboratory lab;

    @BeforeEach
    void open() {
        bench = LabBench.in(folder).describe("A7");
        lab = bench.laboratory();
    }

    @AfterEach
    void close() {
        bench.close();
    }

    private Map<GroupBy, SumsMark> marks() {
        return bench.store().read(access -> access.sumsMarks(lab.sample("A7")));
    }

    private long lastSpot() {
        return marks().get(GroupBy.FEATURE).lastSpot();
    }

    private List<GroupFinding> groups() {
        return lab.segregation("A7", GroupBy.FEATURE).interpretation().groups();
    }

    private List<Recounted.State> recount() {
        List<Recounted> found = new ArrayList<>();
        bench.store().read(access -> {
            new Recount(AlloyCatalogue.packaged(), 0.003).of(access, "A7", found::add);
            return found;
        });
        return found.stream().map(Recounted::state).toList();
    }

    private void renew(String sample) {
        new Recount(AlloyCatalogue.packaged(), 0.003).renew(bench.store(), Optional.of(sample));
    }

    private void execute(String statement) {
        bench.store().write(access -> ((SqlReadAccess) access).handle.execute(statement));
    }

    @Test
    void an_answer_reads_no_spot_that_is_in_the_sums() {
        bench.post("A7", LabBench.spots("P", 300));
        List<GroupFinding> before = groups();
        execute("UPDATE spot_revision SET payload = x'00'");

        assertThat(groups()).isEqualTo(before).hasSize(1);
        execute("DELETE FROM kept_sums");
        assertThatThrownBy(this::groups).as("the spots themselves").isInstanceOf(StorageException.class);
    }

    @Test
    void sums_go_on_once_more_than_256_spots_came_since() {
        bench.post("A7", LabBench.spots("P", 256));
        assertThat(marks()).isEmpty();
        bench.post("A7", LabBench.spot("one more", "70"));
        assertThat(marks().keySet()).containsExactly(GroupBy.values());
        assertThat(lastSpot()).isEqualTo(257);
        bench.post("A7", LabBench.spots("Q", 256));
        assertThat(lastSpot()).isEqualTo(257);
        bench.post("A7", LabBench.spot("and one", "70"));
        assertThat(lastSpot()).isEqualTo(514);
        assertThat(recount()).hasSize(3).containsOnly(Recounted.State.EQUAL);
    }

    @Test
    void a_change_of_a_spot_in_the_sums_makes_them_anew_and_one_of_a_later_spot_does_not() {
        bench.post("A7", LabBench.spots("P", 300));
        bench.post("A7", LabBench.spots("Q", 5));
        lab.withdraw(PublicId.of(PublicId.SPOT, 304), "charging", Expectation.NONE, LabBench.ANNA);
        assertThat(lastSpot()).isEqualTo(300);
        lab.withdraw(PublicId.of(PublicId.SPOT, 2), "charging", Expectation.NONE, LabBench.ANNA);
        assertThat(lastSpot()).isEqualTo(305);
        lab.withdraw(PublicId.of(PublicId.SPOT, 2), "charging", Expectation.NONE, LabBench.ANNA);

        assertThat(marks().get(GroupBy.SAMPLE)).returns(303L, SumsMark::spotCount)
            .returns(lab.sample("A7").revision(), SumsMark::revision);
        assertThat(recount()).containsOnly(Recounted.State.EQUAL);
    }

    /** More copper than there is of both: silver is negative, and zero a number like any other in the whole group. */
    private void correctToNegative(long spot) {
        lab.correct(PublicId.of(PublicId.SPOT, spot), "misread", Expectation.NONE,
            (present, sample) -> LabBench.spot(present.label(), "100.2"), LabBench.ANNA);
    }

    @Test
    void a_change_that_concerns_all_spots_of_a_large_sample_forgets_its_sums_and_the_next_answer_makes_them() {
        bench.post("A7", LabBench.spots("P", 20_005));
        correctToNegative(1);
        assertThat(marks()).isEmpty();
        bench.post("A7", LabBench.spot("one more", "70"));
        assertThat(marks()).as("left to the next answer").isEmpty();

        List<GroupFinding> answer = groups();

        assertThat(marks().keySet()).containsExactly(GroupBy.values());
        assertThat(lastSpot()).isEqualTo(20_006);
        assertThat(recount()).containsOnly(Recounted.State.EQUAL);
        assertThat(groups()).isEqualTo(answer);
        assertThat(answer.get(0).spotCount()).isEqualTo(20_006);
        execute("DELETE FROM kept_sums");
        renew("A7");
        assertThat(recount()).hasSize(3).containsOnly(Recounted.State.EQUAL);
    }

    @Test
    void sums_made_while_the_sample_changes_are_not_kept() {
        bench.post("A7", LabBench.spots("P", 20_005));
        correctToNegative(1);
        Store changing = (Store) Proxy.newProxyInstance(Store.class.getClassLoader(), new Class<?>[] {Store.class},
            (proxy, method, arguments) -> {
                if (method.getName().equals("write")) {
                    lab.withdraw(PublicId.of(PublicId.SPOT, 2), "charging", Expectation.NONE, LabBench.ANNA);
                }
                return method.invoke(bench.store(), arguments);
            });

        Laboratory other = new Laboratory(changing, AlloyCatalogue.packaged(), new Interpreter(), 0.003);

        assertThat(other.segregation("A7", GroupBy.FEATURE).interpretation().spotCount()).isEqualTo(20_004);
        assertThat(marks()).isEmpty();
    }

    @Test
    void damaged_sums_of_full_blocks_give_no_answer_either() {
        bench.post("A7", LabBench.spots("P", 40_000));
        List<GroupFinding> before = groups();
        execute("UPDATE kept_block SET bytes = zeroblob(length(bytes)) WHERE grouped_by = 'feature' AND block = 0");
        execute("UPDATE kept_block SET bytes = zeroblob(length(bytes)) WHERE grouped_by = 'particle' AND block = 2");

        assertThat(recount())
            .containsExactly(Recounted.State.DAMAGED, Recounted.State.DAMAGED, Recounted.State.EQUAL);
        assertThat(groups()).isEqualTo(before);
        lab.withdraw(PublicId.of(PublicId.SPOT, 3), "charging", Expectation.NONE, LabBench.ANNA);
        assertThat(marks().keySet()).as("a damaged block is not gone on from").containsExactly(GroupBy.SAMPLE);
        groups();
        assertThat(recount()).hasSize(3).containsOnly(Recounted.State.EQUAL);
    }

    @Test
    void damaged_sums_give_no_answer_and_are_made_anew_only_when_asked() {
        bench.post("A7", LabBench.spots("P", 300));
        List<GroupFinding> before = groups();
        execute("UPDATE kept_sums SET sums = zeroblob(length(sums)) WHERE grouped_by = 'feature'");

        assertThat(groups()).isEqualTo(before);
        assertThat(recount()).containsExactly(Recounted.State.DAMAGED, Recounted.State.EQUAL, Recounted.State.EQUAL);
        assertThat(recount()).as("again").contains(Recounted.State.DAMAGED);
        renew("A7");
        assertThat(recount()).containsOnly(Recounted.State.EQUAL);
        execute("UPDATE kept_sums SET last_spot = 299");
        assertThat(recount()).containsOnly(Recounted.State.DAMAGED);
    }

    @Test
    void sums_of_other_spots_are_found_by_a_recount() {
        Spot[] spots = LabBench.spots("P", 300);
        bench.post("A7", spots);
        bench.describe("A8").post("A8", LabBench.spots("Q", 299));
        bench.post("A8", LabBench.spot("other", "55"));
        renew("A8");
        StoredSample present = lab.sample("A7");
        StoredSample other = lab.sample("A8");
        Alloy alloy = AlloyCatalogue.packaged().require(LabBench.AG_CU);
        bench.store().write(access -> {
            SpotSource theirs = access.spotSource(other);
            access.keepSums(present, GroupBy.FEATURE, Optional.ofNullable(GrowingSums.of(
                new GrowingSums.Inputs(other.sample(), alloy.nominal(), alloy.phases(), 0.003), theirs,
                Map.of(GroupBy.FEATURE, 9)).finish(theirs).get(GroupBy.FEATURE)));
            return present;
        });

        assertThat(recount()).containsExactly(Recounted.State.DIFFERENT, Recounted.State.EQUAL, Recounted.State.EQUAL);
    }

    @Test
    void a_spot_with_the_first_negative_value_of_its_group_has_the_sums_go_on_at_once() {
        bench.post("A7", LabBench.spots("P", 300));
        bench.post("A7", LabBench.spot("like the others", "70"));
        assertThat(lastSpot()).isEqualTo(300);
        bench.post("A7", LabBench.spot("more copper than all", "100.2"));
        assertThat(lastSpot()).isEqualTo(302);
        bench.post("A7", LabBench.spot("again", "100.1"));
        assertThat(lastSpot()).isEqualTo(302);
        List<GroupFinding> answer = groups();
        execute("UPDATE spot_revision SET payload = x'00' WHERE spot <= 302");

        assertThat(groups()).as("without a look at the spots in the sums").isEqualTo(answer);
    }

    @Test
    void a_rehearsed_import_leaves_the_sums_as_they_are() {
        bench.post("A7", LabBench.spots("P", 300));
        SumsMark before = marks().get(GroupBy.FEATURE);

        bench.post("A7", new ImportOptions(ImportOptions.OnError.REFUSE, true),
            LabBench.spots("Q", 300));

        assertThat(marks().get(GroupBy.FEATURE)).isEqualTo(before);
    }
}
