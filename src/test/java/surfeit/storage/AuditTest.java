package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.lab.AuditChain;
import surfeit.lab.AuditCheck;
import surfeit.lab.AuditEntry;
import surfeit.lab.AuditHead;
import surfeit.lab.Expectation;
import surfeit.lab.PageRequest;

@OnBothEngines
class AuditTest {
    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;
    private AuditHead head;

    @BeforeEach
    void record() {
        try (LabBench bench = LabBench.in(engine, folder).describe("A7")) {
            bench.post("A7", LabBench.spot("P1-1", "78.8"));
            bench.laboratory().correct("spt_0001", "misread", Expectation.NONE,
                (spot, sample) -> LabBench.spot("P1-1", "77.8"), LabBench.ANNA);
            bench.laboratory().withdraw("spt_0001", "charging", Expectation.NONE, LabBench.ANNA);
            head = bench.laboratory().auditLog().head();
        }
    }

    @Test
    void every_change_has_a_row_with_who_when_what_from_to_and_why() {
        try (LabBench bench = LabBench.in(engine, folder)) {
            var rows = bench.laboratory().auditLog().page(PageRequest.first(10)).items();

            assertThat(rows).extracting(AuditEntry::what)
                .containsExactly("sample described", "spots imported", "spot corrected", "spot withdrawn");
            assertThat(rows).allSatisfy(row -> assertThat(row).returns("anna", AuditEntry::who)
                .returns(LabBench.NOON, AuditEntry::when).returns(Optional.of("A7"), AuditEntry::sample));
            assertThat(rows.get(1).detail())
                .startsWith("imp_0001: 1 accepted, 0 unchanged, 0 rejected; original sha256:"
                    + bench.laboratory().imports().report("imp_0001").file().sha256().orElseThrow() + "; recorded sha256:");
            assertThat(rows.get(2).detail()).startsWith("spt_0001 revision 2: ").contains("Cu \"78.8\" -> \"77.8\"")
                .contains("reason: misread; recorded sha256:");
            assertThat(rows.get(3).detail()).startsWith("spt_0001 revision 3: reason: charging; recorded sha256:");
        }
    }

    @Test
    void an_untouched_audit_is_whole_and_its_head_is_its_last_row() {
        AuditCheck check = check();

        assertThat(check.broken()).isEmpty();
        assertThat(check.head()).isEqualTo(head).returns(4L, AuditHead::count);
    }

    @Test
    void an_empty_audit_is_whole() {
        try (LabBench bench = LabBench.in(engine, folder.resolve("new"))) {
            assertThat(bench.laboratory().auditLog().check())
                .isEqualTo(new AuditCheck(new AuditHead(0, AuditChain.START), Optional.empty()));
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "UPDATE audit SET who = 'ben' WHERE id = 2                                 | 2",
        "UPDATE audit SET detail = replace(detail, '77.8', '78.8') WHERE id = 3    | 3",
        "UPDATE audit SET recorded = '2026-11-20T12:00:01Z' WHERE id = 1           | 1",
        "UPDATE audit SET sample = NULL WHERE id = 4                               | 4",
        "UPDATE audit SET what = 'sample', detail = ' described revision 1' WHERE id = 1 | 1",
        "DELETE FROM audit WHERE id = 2                                            | 2",
        "DELETE FROM audit WHERE id = 1                                            | 1",
        "UPDATE audit SET hash = (SELECT hash FROM audit WHERE id = 1) WHERE id = 3 | 3"})
    void the_first_row_that_was_touched_is_named(String tampering, long row) throws SQLException {
        change(tampering);

        assertThat(check().broken()).get().returns(row, AuditCheck.Broken::number);
    }

    @Test
    void a_cut_tail_shows_by_what_is_on_record_and_against_a_head_kept_elsewhere() throws SQLException {
        change("DELETE FROM audit WHERE id = 4");

        AuditCheck check = check();

        assertThat(check.broken()).get().returns(4L, AuditCheck.Broken::number).satisfies(broken ->
            assertThat(broken.what()).contains("3 revisions of spots are on record, the audit tells of 2"));
        assertThat(check.head()).isNotEqualTo(head).returns(3L, AuditHead::count);
    }

    @Test
    void the_chain_goes_on_after_opening_again() {
        try (LabBench bench = LabBench.in(engine, folder).describe("B1")) {
            assertThat(bench.laboratory().auditLog().check()).returns(Optional.empty(), AuditCheck::broken)
                .returns(bench.laboratory().auditLog().head(), AuditCheck::head);
            assertThat(bench.laboratory().auditLog().head().count()).isEqualTo(5);
        }
    }

    private AuditCheck check() {
        try (LabBench bench = LabBench.in(engine, folder)) {
            return bench.laboratory().auditLog().check();
        }
    }

    private void change(String sql) throws SQLException {
        assertThat(engine.change(folder, sql)).isEqualTo(1);
    }
}
