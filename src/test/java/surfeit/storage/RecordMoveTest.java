package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.composition.Alloy;
import surfeit.composition.SourceRead;
import surfeit.lab.AuditHead;
import surfeit.lab.EventFilter;
import surfeit.lab.Expectation;
import surfeit.lab.FrozenAnswer;
import surfeit.lab.ImportOptions;
import surfeit.lab.KeptAnswer;
import surfeit.lab.LabEvent;
import surfeit.lab.MadeWith;
import surfeit.lab.PageRequest;
import surfeit.lab.Problem;
import surfeit.lab.RepeatKey;
import surfeit.lab.SpotFilter;
import surfeit.lab.TokenRequest;
import surfeit.lab.TokenScope;
import surfeit.segregation.answer.GroupBy;

/** A record on its way from a file to a database and back. */
class RecordMoveTest {
    @TempDir
    Path folder;

    private Path data() {
        return folder.resolve("data");
    }

    private DatabaseAddress database() {
        return RecordEngine.PostgresDatabases.of(folder);
    }

    /** Something of everything a record may hold. */
    private void record() {
        try (LabBench bench = LabBench.in(data())) {
            bench.describe("A7").post("A7", LabBench.spots("P", 600));
            bench.laboratory().describe("A7", LabBench.described("Pülver, 粉"), Expectation.revision(2), LabBench.ANNA);
            bench.laboratory().correct("spt_0002", "misread", Expectation.NONE,
                (spot, sample) -> LabBench.spot("P1", "77.8"), LabBench.ANNA);
            bench.laboratory().withdraw("spt_0003", "charging", Expectation.NONE, LabBench.ANNA);
            bench.post("A7", new ImportOptions(ImportOptions.OnError.SKIP, false), LabBench.spot("P0", "11"),
                LabBench.inSession(LabBench.spot("R", "70"), Optional.empty()));
            bench.laboratory().interpretations().freeze("A7", GroupBy.FEATURE, (answer, spots) -> new FrozenAnswer(
                MadeWith.of("a method", 3, "9.9", Map.of()), new TreeMap<>(Map.of("md", "# Probe\n"))), LabBench.ANNA);
            bench.laboratory().defineAlloy(new Alloy("own", "first", LabBench.nominal("Ag", 0.2, "Cu", 0.8),
                Optional.empty(), "invented for a test", SourceRead.YES, List.of()), Expectation.NONE, LabBench.ANNA);
            bench.laboratory().once(new RepeatKey("anna", "k1", "f1"), LabBench.ANNA,
                open -> new KeptAnswer(201, Map.of("Location", "/v1"), new byte[] {0, 1, 2}));
            bench.laboratory().access().issue(new TokenRequest("bench", Set.of(TokenScope.READ), Optional.empty()),
                new byte[32], LabBench.ANNA);
        }
    }

    @Test
    void a_record_goes_to_a_database_and_back_and_is_the_same_and_goes_on() throws IOException {
        record();
        byte[] before = Files.readAllBytes(data().resolve("surfeit.db"));
        AuditHead head = RecordFile.read(data(), access -> access.auditHead());

        MoveReport there = RecordMove.toDatabase(data(), database(), LabBench.NOON);
        assertThat(Files.readAllBytes(data().resolve("surfeit.db"))).isEqualTo(before);
        assertThat(there.rowCounts()).containsEntry("spot", 601L).containsEntry("spot_revision", 603L)
            .containsEntry("token", 1L).containsEntry("idempotency", 1L).containsEntry("alloy", 1L);
        assertThat(there.audit().head()).isEqualTo(head);
        assertThat(there.audit().broken()).isEmpty();

        MoveReport back = RecordMove.toFolder(database(), folder.resolve("back"), LabBench.NOON);
        assertThat(back.audit()).isEqualTo(there.audit());
        assertThat(List.of(answers(RecordEngine.POSTGRESQL, folder), answers(RecordEngine.SQLITE, folder.resolve("back"))))
            .allMatch(answers(RecordEngine.SQLITE, data())::equals);
        goesOn(RecordEngine.POSTGRESQL, folder);
        goesOn(RecordEngine.SQLITE, folder.resolve("back"));
    }

    private static List<Object> answers(RecordEngine engine, Path place) {
        try (LabBench bench = LabBench.in(engine, place)) {
            var lab = bench.laboratory();
            return List.of(lab.sample("A7"), lab.segregation("A7", GroupBy.FEATURE).interpretation().groups(),
                lab.spots("A7", new SpotFilter(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                    Optional.empty(), true), PageRequest.first(1000)), lab.spotRevisions("spt_0002"),
                lab.imports().report("imp_0001"), lab.imports().report("imp_0002"), lab.interpretations().find("int_0001"),
                lab.alloys(),
                lab.events(EventFilter.ALL, 0, 100), lab.auditLog().page(PageRequest.first(100)),
                lab.access().tokens(PageRequest.first(10)), lab.sampleRevisions("A7", PageRequest.first(100)));
        }
    }

    /** Numbers continue where they were, and the audit stays whole. */
    private static void goesOn(RecordEngine engine, Path place) {
        try (LabBench bench = LabBench.in(engine, place)) {
            long last = bench.laboratory().eventLog().range().last();
            assertThat(bench.post("A7", LabBench.spot("new", "70")).id()).hasValue("imp_0003");
            assertThat(bench.laboratory().events(EventFilter.ALL, last, 10)).extracting(LabEvent::id)
                .containsExactly(last + 1, last + 2);
            assertThat(bench.laboratory().auditLog().check().broken()).isEmpty();
        }
    }

    @Test
    void numbers_of_events_that_are_gone_are_not_given_again_on_the_other_side() throws Exception {
        record();
        RecordEngine.SQLITE.change(data(), "DELETE FROM event");

        RecordMove.toDatabase(data(), database(), LabBench.NOON);
        RecordMove.toFolder(database(), folder.resolve("back"), LabBench.NOON);

        for (var place : Map.of(RecordEngine.POSTGRESQL, folder, RecordEngine.SQLITE, folder.resolve("back")).entrySet()) {
            try (LabBench bench = LabBench.in(place.getKey(), place.getValue())) {
                bench.describe("B1");
                assertThat(bench.laboratory().eventLog().range().last()).isEqualTo(9);
            }
        }
    }

    @Test
    void the_copy_remembers_how_the_audit_ended() throws Exception {
        record();
        RecordMove.toDatabase(data(), database(), LabBench.NOON);

        RecordEngine.POSTGRESQL.change(folder, "DELETE FROM audit WHERE id = 9");

        try (LabBench bench = LabBench.in(RecordEngine.POSTGRESQL, folder)) {
            assertThat(bench.laboratory().auditLog().check().broken()).get()
                .satisfies(broken -> assertThat(broken.what()).contains("the audit once had 9"));
        }
    }

    @Test
    void nothing_is_overwritten() {
        record();
        try (LabBench bench = LabBench.in(RecordEngine.POSTGRESQL, folder)) {
            bench.describe("B1");
        }
        assertThatThrownBy(() -> RecordMove.toDatabase(data(), database(), LabBench.NOON))
            .isInstanceOf(StorageException.class).hasMessageContaining("is not empty")
            .hasMessageContaining("Nothing is ever overwritten");
        assertThatThrownBy(() -> RecordMove.toFolder(database(), data(), LabBench.NOON))
            .isInstanceOf(StorageException.class).hasMessageContaining("is not empty");
        try (LabBench bench = LabBench.in(RecordEngine.POSTGRESQL, folder)) {
            assertThat(bench.laboratory().sample("B1").revision()).isEqualTo(1);
            LabBench.assertRefused(() -> bench.laboratory().sample("A7"), Problem.NOT_FOUND);
        }
    }

    @Test
    void a_service_on_either_side_is_told_of() {
        record();
        try (LabBench running = LabBench.in(data())) {
            assertThatThrownBy(() -> RecordMove.toDatabase(data(), database(), LabBench.NOON))
                .isInstanceOf(StorageException.class).hasMessageContaining("is in use by another running program");
            assertThat(running.laboratory().sample("A7").spotCount()).isEqualTo(600);
        }
        try (LabBench running = LabBench.in(RecordEngine.POSTGRESQL, folder)) {
            assertThatThrownBy(() -> RecordMove.toFolder(database(), folder.resolve("back"), LabBench.NOON))
                .isInstanceOf(StorageException.class).hasMessageContaining("A service runs on the database");
            assertThat(folder.resolve("back").resolve("surfeit.db")).doesNotExist();
            running.describe("B1");
        }
    }

    @Test
    void a_place_without_a_record_has_nothing_to_move() {
        assertThatThrownBy(() -> RecordMove.toDatabase(data(), database(), LabBench.NOON))
            .isInstanceOf(StorageException.class).hasMessageContaining("There is no record in the data folder");
    }

    @Test
    void a_backup_of_a_database_is_restored_into_a_folder() throws Exception {
        try (LabBench bench = LabBench.in(RecordEngine.POSTGRESQL, folder)) {
            bench.describe("A7").post("A7", LabBench.spots("P", 30));
            Path file = folder.resolve("lab.backup");

            PostgresBackup.take(database(), file, LabBench.NOON);
            bench.post("A7", LabBench.spot("later", "70"));
            SqliteRestore.restore(file, folder.resolve("restored"), LabBench.NOON);

            try (LabBench restored = LabBench.in(folder.resolve("restored"))) {
                assertThat(restored.laboratory().sample("A7").spotCount()).isEqualTo(30);
                assertThat(restored.laboratory().auditLog().check().broken()).isEmpty();
            }
        }
    }
}
