package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
import surfeit.lab.StoredSample;
import surfeit.lab.SumsMark;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.blocks.GrowingSums;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.Spot;

/** When sums are kept of a sample's spots and go on, and what becomes of damaged ones. */
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
    void a_change_of_a_spot_has_the_sums_go_on_to_the_last_one() {
        bench.post("A7", LabBench.spots("P", 300));
        bench.post("A7", LabBench.spots("Q", 5));
        assertThat(lastSpot()).isEqualTo(300);
        lab.withdraw(PublicId.of(PublicId.SPOT, 304), "charging", Expectation.NONE, LabBench.ANNA);
        assertThat(lastSpot()).as("of a spot behind the sums").isEqualTo(305);
        bench.post("A7", LabBench.spots("R", 5));
        lab.withdraw(PublicId.of(PublicId.SPOT, 2), "charging", Expectation.NONE, LabBench.ANNA);
        assertThat(lastSpot()).as("of a spot in the sums").isEqualTo(310);
        SumsMark before = marks().get(GroupBy.SAMPLE);
        lab.withdraw(PublicId.of(PublicId.SPOT, 2), "charging", Expectation.NONE, LabBench.ANNA);

        assertThat(marks().get(GroupBy.SAMPLE)).isEqualTo(before).returns(308L, SumsMark::spotCount)
            .returns(lab.sample("A7").revision(), SumsMark::revision);
        assertThat(recount()).containsOnly(Recounted.State.EQUAL);
    }

    @Test
    void a_change_where_blocks_are_not_kept_one_by_one_has_the_sums_made_anew_at_once() {
        int spots = 3 * 16_384 + 100;
        Spot[] interleaved = LabBench.spots("P", spots);
        for (int i = 0; i < spots; i++) {
            interleaved[i] = onParticle(interleaved[i], "P" + i % 1400);
        }
        bench.post("A7", interleaved);
        assertThat(bench.store().<Integer>read(access -> ((SqlReadAccess) access).handle
            .createQuery("SELECT count(*) FROM kept_block WHERE grouped_by = 'particle' AND block > 0")
            .mapTo(Integer.class).one()))
            .as("1400 particles in each of three blocks").isZero();

        lab.withdraw(PublicId.of(PublicId.SPOT, 20_000), "charging", Expectation.NONE, LabBench.ANNA);

        assertThat(marks().values()).hasSize(3).allSatisfy(mark -> assertThat(mark)
            .returns(spots - 1L, SumsMark::spotCount).returns(true, SumsMark::hasSums));
        assertThat(recount()).hasSize(3).containsOnly(Recounted.State.EQUAL);
    }

    private static Spot onParticle(Spot spot, String particle) {
        return new Spot(spot.label(), Optional.of(particle), spot.feature(), spot.session(), spot.acquiredTime(),
            spot.conditions(), spot.reference(), spot.basis(), spot.values());
    }

    @Test
    void too_many_particles_are_found_once_and_looked_for_again_when_they_are_named_otherwise() {
        Spot[] each = LabBench.spots("P", 2100);
        for (int i = 0; i < each.length; i++) {
            each[i] = onParticle(each[i], "P" + i);
        }
        bench.post("A7", each);
        assertThat(marks().get(GroupBy.PARTICLE).hasSums()).isFalse();
        assertThat(marks().get(GroupBy.FEATURE).hasSums()).isTrue();
        lab.describe("A7", LabBench.described("words"), Expectation.revision(lab.sample("A7").revision()), LabBench.ANNA);
        assertThat(marks().get(GroupBy.PARTICLE).hasSums()).isFalse();
        for (int i = 1; i <= 60; i++) {
            lab.withdraw(PublicId.of(PublicId.SPOT, i), "charging", Expectation.NONE, LabBench.ANNA);
        }
        renew("A7");
        assertThat(marks().get(GroupBy.PARTICLE).hasSums()).isTrue();
        assertThat(recount()).hasSize(3).containsOnly(Recounted.State.EQUAL);
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
        assertThat(recount()).as("a damaged block is not gone on from").hasSize(3).containsOnly(Recounted.State.EQUAL);
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
