package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import surfeit.composition.Alloy;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Basis;
import surfeit.composition.NominalText;
import surfeit.composition.SourceRead;
import surfeit.element.Element;
import surfeit.lab.Expectation;
import surfeit.lab.Laboratory;
import surfeit.lab.PublicId;
import surfeit.lab.Recounted;
import surfeit.lab.StoredAlloy;
import surfeit.lab.StoredSample;
import surfeit.lab.SumsMark;
import surfeit.segregation.answer.GroupBy;
import surfeit.spot.Conditions;
import surfeit.spot.Judgement;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
import surfeit.spot.Spot;
import surfeit.spot.SpotCentre;

/**
 * Whatever changes, a sample of more than one block of spots has its sums as soon as the change is on record, so that no
 * answer reads a spot that is in them. All values are invented.
 */
@OnBothEngines
class SumsAfterEveryChangeTest {
    private static final int SPOTS = 16_384 + 400;
    private static final String ALLOY = "own-ag-cu-sn";

    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;
    private LabBench bench;
    private Laboratory lab;
    private long last;

    @BeforeEach
    void open() {
        bench = LabBench.in(engine, folder);
        lab = bench.laboratory();
        state("Ag:58,Cu:36,Sn:6");
        describe(plain());
        bench.post("A7", LabBench.spots("P", SPOTS));
        last = SPOTS;
    }

    @AfterEach
    void close() {
        bench.close();
    }

    private void state(String nominal) {
        long revision = bench.store().read(access -> access.alloy(ALLOY).map(StoredAlloy::revision).orElse(0L));
        lab.defineAlloy(new Alloy(ALLOY, nominal, NominalText.parse(nominal, Basis.ATOMIC), Optional.empty(),
            "invented for a test", SourceRead.YES, AlloyCatalogue.packaged().require("ag-cu-eutectic").phases()),
            revision == 0 ? Expectation.NONE : Expectation.revision(revision), LabBench.ANNA);
    }

    private static Sample plain() {
        return Sample.of(Optional.of(ALLOY), Optional.empty());
    }

    private static Sample with(Set<Element> excluded, OptionalDouble kev, SpotCentre centre, String description,
                               boolean independent) {
        Sample plain = plain();
        Judgement usual = plain.judgement();
        return new Sample(plain.alloy(), plain.nominal(), excluded, plain.accuracyClass(), plain.form(),
            new Sample.Geometry(kev, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty()), plain.coating(),
            plain.mount(), new Judgement(usual.marginOddsRatio(), usual.alpha(), usual.uLevel(),
            usual.referenceCorrelation(), centre), plain.preparation(), plain.diffractionPhases(), description, independent);
    }

    private void describe(Sample sample) {
        long revision = bench.store().read(access -> access.sample("A7").map(StoredSample::revision).orElse(0L));
        lab.describe("A7", sample, revision == 0 ? Expectation.NONE : Expectation.revision(revision), LabBench.ANNA);
    }

    private void post(Spot spot) {
        bench.post("A7", spot);
        last++;
    }

    private void correct(long spot, Spot values) {
        lab.correct(PublicId.of(PublicId.SPOT, spot), "misread", Expectation.NONE, (present, sample) -> new Spot(
            present.label(), present.particle(), present.feature(), present.session(), present.acquiredTime(),
            Conditions.UNKNOWN, present.reference(), present.basis(), values.values()), LabBench.ANNA);
    }

    private void withdraw(long spot) {
        lab.withdraw(PublicId.of(PublicId.SPOT, spot), "charging", Expectation.NONE, LabBench.ANNA);
    }

    private static Spot withTin(String label, double tin) {
        return new Spot(label, Optional.of("P2"), Optional.of("dark patch"), Optional.of("2026-11-20-a"), Optional.empty(),
            Conditions.UNKNOWN, Optional.empty(), Basis.ATOMIC, Map.of(
                Element.of("Ag"), ReportedValue.Measured.of(0.58, "58.0"),
                Element.of("Cu"), ReportedValue.Measured.of(0.36, "36.0"),
                Element.of("Sn"), ReportedValue.Measured.of(tin, String.valueOf(100 * tin))));
    }

    private static Spot onReference(String label, String copper) {
        return LabBench.withReference(LabBench.spot(label, copper), LabBench.nominal("Ag", 0.3, "Cu", 0.7));
    }

    private Map<GroupBy, SumsMark> marks() {
        return bench.marks("A7");
    }

    private List<Recounted.State> recount() {
        return bench.recount("A7");
    }

    private List<Object> answer(GroupBy by) {
        return bench.answer("A7", by);
    }

    private List<List<Object>> answers() {
        return List.of(answer(GroupBy.FEATURE), answer(GroupBy.PARTICLE), answer(GroupBy.SAMPLE));
    }

    /** Spots of the specimen are not found by whoever reads spots; done again with the other sign, they are. */
    private void hideSpecimen(int sign) throws SQLException {
        engine.change(folder, "UPDATE spot_revision SET from_revision = from_revision + " + sign * 1_000_000
            + " WHERE reference = 0");
    }

    private void keptAfter(String what, Runnable change) throws SQLException {
        change.run();
        assertThat(marks().values()).as(what).hasSize(3).allSatisfy(mark -> assertThat(mark)
            .returns(true, SumsMark::hasSums).returns(last, SumsMark::lastSpot)
            .returns(lab.sample("A7").spotCount(), SumsMark::spotCount));
        List<List<Object>> answers = answers();
        hideSpecimen(1);
        assertThat(answers()).as("%s: answers without a look at a spot", what).isEqualTo(answers);
        hideSpecimen(-1);
        assertThat(recount()).as(what).hasSize(3).containsOnly(Recounted.State.EQUAL);
    }

    @Test
    void spots_that_have_their_group_closed_otherwise_have_the_sums_made_anew_at_once() throws SQLException {
        keptAfter("a first element, by a correction", () -> correct(7, withTin("any", 0.05)));
        keptAfter("which goes again", () -> withdraw(7));
        keptAfter("a first element, posted", () -> post(withTin("tin", 0.05)));
        keptAfter("a first negative value, by a correction", () -> correct(9, withTin("any", -0.002)));
        keptAfter("which is corrected", () -> correct(9, LabBench.spot("any", "71")));
        keptAfter("a first negative value, posted", () -> post(withTin("less than nothing", -0.001)));
    }

    @Test
    void reference_spots_have_the_sums_made_anew_at_once() throws SQLException {
        keptAfter("a first reference spot", () -> post(onReference("R1", "69")));
        keptAfter("a second one", () -> post(onReference("R2", "69.4")));
        keptAfter("of another session", () -> post(LabBench.inSession(onReference("R3", "60"), Optional.of("another"))));
        keptAfter("one corrected", () -> correct(SPOTS + 1, LabBench.spot("any", "68.8")));
        keptAfter("one withdrawn", () -> withdraw(SPOTS + 2));
    }

    @Test
    void descriptions_and_alloys_have_the_sums_made_anew_at_once() throws SQLException {
        bench.post("A7", withTin("tin", 0.05), LabBench.spot("copper", "88"));
        last += 2;
        keptAfter("words", () -> describe(with(Set.of(), OptionalDouble.empty(), SpotCentre.MEAN, "words", false)));
        keptAfter("an element left out", () ->
            describe(with(Set.of(Element.of("Sn")), OptionalDouble.empty(), SpotCentre.MEAN, "", false)));
        keptAfter("a beam energy", () -> describe(with(Set.of(), OptionalDouble.of(15), SpotCentre.MEAN, "", false)));
        keptAfter("independent spots", () -> describe(with(Set.of(), OptionalDouble.of(15), SpotCentre.MEAN, "", true)));
        describe(with(Set.of(), OptionalDouble.empty(), SpotCentre.MEDIAN, "", false));
        assertThat(marks()).as("a median needs every spot").isEmpty();
        keptAfter("no median any more", () -> describe(plain()));
        keptAfter("another nominal", () -> state("Ag:57,Cu:37,Sn:6"));
        keptAfter("a nominal without tin", () -> state("Ag:60,Cu:40"));
    }

    @Test
    void where_the_sums_cannot_be_made_nothing_of_the_change_is_on_record() throws SQLException {
        engine.change(folder, "UPDATE spot_revision SET payload = x'00' WHERE spot = 3");
        Map<GroupBy, SumsMark> marks = marks();
        Map<String, Long> rows = bench.rowCounts();

        assertThatThrownBy(() -> post(onReference("R1", "69"))).isInstanceOf(StorageException.class);
        assertThatThrownBy(() -> correct(9, withTin("any", 0.05))).isInstanceOf(StorageException.class);
        assertThatThrownBy(() -> state("Ag:60,Cu:40")).isInstanceOf(StorageException.class);

        assertThat(marks()).isEqualTo(marks);
        assertThat(bench.rowCounts()).isEqualTo(rows);
        bench.post("A7", LabBench.spot("one that needs no other", "70"));
        assertThat(lab.sample("A7").spotCount()).isEqualTo(SPOTS + 1);
    }
}
