package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.composition.Alloy;
import surfeit.composition.SourceRead;
import surfeit.lab.AuditCheck;
import surfeit.lab.Expectation;
import surfeit.lab.ImportOptions;
import surfeit.lab.KeptAnswer;
import surfeit.lab.Problem;
import surfeit.lab.RepeatKey;

/** The audit against what is on record: whatever was recorded and is changed behind the program's back shows. */
@OnBothEngines
class RecordComparisonTest {
    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;

    /** Rows 1 to 10: A7, four spots, a correction, a withdrawal, an alloy twice, A7 anew, B1, two spots, one more. */
    @BeforeEach
    void record() {
        try (LabBench bench = LabBench.in(engine, folder).describe("A7")) {
            bench.post("A7", LabBench.spots("P", 4));
            bench.laboratory().correct("spt_0002", "misread", Expectation.NONE,
                (spot, sample) -> LabBench.spot("P1", "77.8"), LabBench.ANNA);
            bench.laboratory().withdraw("spt_0003", "charging", Expectation.NONE, LabBench.ANNA);
            bench.laboratory().defineAlloy(alloy("first"), Expectation.NONE, LabBench.ANNA);
            bench.laboratory().defineAlloy(alloy("second"), Expectation.revision(1), LabBench.ANNA);
            bench.laboratory().describe("A7", LabBench.described("polished"), Expectation.revision(4), LabBench.ANNA);
            bench.describe("B1");
            bench.post("B1", LabBench.spots("Q", 2));
            refusedImport(bench);
            bench.post("A7", new ImportOptions(ImportOptions.OnError.SKIP, false), LabBench.spot("P0", "11"),
                LabBench.spot("R", "70"));
        }
    }

    private static void refusedImport(LabBench bench) {
        bench.laboratory().once(new RepeatKey("anna", "k1", "f1"), LabBench.ANNA, open -> {
            LabBench.assertRefused(() -> open.importSpots("A7", LabBench.upload("x"),
                LabBench.rows(LabBench.spot("S", "78.8"), LabBench.spot("S", "70")), ImportOptions.DEFAULT,
                LabBench.ANNA), Problem.DUPLICATE_SPOT);
            return new KeptAnswer(422, Map.of(), new byte[0]);
        });
    }

    private static Alloy alloy(String name) {
        return new Alloy("own", name, LabBench.nominal("Ag", 0.2, "Cu", 0.8), Optional.empty(), "invented for a test",
            SourceRead.YES, List.of());
    }

    @Test
    void an_untouched_record_is_what_the_audit_tells() {
        AuditCheck check = check();

        assertThat(check.broken()).isEmpty();
        assertThat(check.head().count()).isEqualTo(10);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "UPDATE spot_revision SET payload = (SELECT payload FROM spot_revision WHERE spot = 1) WHERE spot = 4 | 2",
        "UPDATE spot_revision SET feature = 'rim' WHERE spot = 1                        | 2",
        "UPDATE spot_revision SET withdrawn = 1 WHERE spot = 1                          | 2",
        "UPDATE spot SET label = 'P9' WHERE id = 1                                      | 2",
        "UPDATE spot SET import = 2 WHERE id = 1                                        | 2",
        "UPDATE spot_revision SET reason = 'better so' WHERE spot = 2 AND n = 2         | 3",
        "UPDATE spot_revision SET payload = x'000000' WHERE spot = 2 AND n = 2         | 3",
        "UPDATE spot_revision SET withdrawn = 0 WHERE spot = 3 AND n = 2                | 4",
        "UPDATE alloy_revision SET payload = (SELECT payload FROM alloy_revision WHERE n = 2) WHERE n = 1 | 5",
        "UPDATE sample_revision SET description = x'000000' WHERE sample = 1 AND n = 5 | 7",
        "UPDATE sample_revision SET who = 'ben' WHERE sample = 2 AND n = 1              | 8",
        "UPDATE sample_revision SET recorded = '2026-11-20T12:00:01Z' WHERE sample = 2 AND n = 1 | 8",
        "UPDATE sample SET name = 'B2' WHERE id = 2                                     | 8",
        "UPDATE import_file SET bytes = x'000000' WHERE import = 2 AND kind = 'original' | 9",
        "UPDATE import SET sha256 = '0' WHERE id = 2                                    | 9",
        "UPDATE import SET accepted_count = 2 WHERE id = 3                              | 10",
        "UPDATE spot_revision SET until_revision = NULL WHERE spot = 2 AND n = 1        | 11",
        "UPDATE sample SET revision = 3 WHERE id = 1                                    | 11",
        "UPDATE sample_revision SET described = 1 WHERE sample = 1 AND n = 6            | 11",
        "UPDATE sample_revision SET spot_count = 99 WHERE sample = 1 AND n = 6          | 11",
        "UPDATE alloy SET revision = 1                                                  | 11",
        "INSERT INTO spot VALUES (99, 1, '', 'invented', 5, 1)                          | 11",
        "INSERT INTO alloy_revision SELECT alloy, 3, who, recorded, payload FROM alloy_revision WHERE n = 1 | 11"})
    void what_was_changed_behind_the_programs_back_is_found_at_the_row_that_recorded_it(String tampering, long row)
        throws Exception {
        engine.change(folder, tampering);

        assertThat(check().broken()).get()
            .returns(row, AuditCheck.Broken::number);
    }

    private AuditCheck check() {
        try (LabBench bench = LabBench.in(engine, folder)) {
            return bench.laboratory().auditLog().check();
        }
    }
}
