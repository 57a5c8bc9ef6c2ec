package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import surfeit.composition.AlloyCatalogue;
import surfeit.lab.AuditCheck;
import surfeit.lab.AuditHead;
import surfeit.lab.BackupReport;
import surfeit.lab.Laboratory;
import surfeit.segregation.Interpreter;
import surfeit.storage.OnBothEngines;
import surfeit.storage.RecordEngine;
import surfeit.storage.SqliteRestore;
import surfeit.storage.SqliteStore;

/** The record as one file over HTTP. */
@OnBothEngines
class BackupRouteTest {
    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;
    private RunningService service;

    @BeforeEach
    void start() {
        service = RunningService.start(engine);
        service.put("/v1/samples/A7", "{\"alloy\": \"ag-cu-eutectic\"}");
        service.post("/v1/samples/A7/spots", "text/csv", "label,Ag at%,Cu at%\nP1-1,21.2,78.8\nP1-2,22.0,78.0\n");
    }

    @AfterEach
    void stop() {
        service.close();
    }

    @Test
    void the_file_sent_restores_to_the_same_record_and_carries_its_digest_and_the_end_of_the_audit() throws Exception {
        Reply reply = service.get("/v1/backup");

        assertThat(reply.status()).isEqualTo(200);
        assertThat(reply.mediaType()).isEqualTo("application/vnd.sqlite3");
        assertThat(reply.header("Cache-Control")).hasValue("no-store");
        assertThat(reply.header("Content-Length")).hasValue(Integer.toString(reply.body().length));
        assertThat(reply.header("Content-Disposition"))
            .hasValue("attachment; filename=\"surfeit-2026-11-24T083000Z.backup\"");
        assertThat(reply.header("Repr-Digest")).hasValue("sha-256=:"
            + Base64.getEncoder().encodeToString(MessageDigest.getInstance("SHA-256").digest(reply.body())) + ":");
        AuditHead head = service.laboratory().auditLog().head();
        assertThat(reply.header("Audit-Head")).hasValue(head.count() + ":" + head.hash());

        Path file = Files.write(folder.resolve("lab.backup"), reply.body());
        BackupReport report = SqliteRestore.restore(file, folder.resolve("restored"), RunningService.NOW);
        assertThat(report.rowCounts()).containsEntry("spot", 2L).containsEntry("sample", 1L);
        try (SqliteStore store = SqliteStore.open(folder.resolve("restored"))) {
            Laboratory restored = new Laboratory(store, AlloyCatalogue.packaged(), new Interpreter(), 0.003);
            assertThat(restored.sample("A7")).isEqualTo(service.laboratory().sample("A7"));
            assertThat(restored.auditLog().check()).returns(head, AuditCheck::head);
        }
    }

    @Test
    void only_the_head_makes_no_copy_and_a_copy_that_was_sent_is_gone() throws Exception {
        assertThat(service.send("HEAD", "/v1/backup", new byte[0]).status()).isEqualTo(200);
        service.get("/v1/backup");

        try (Stream<Path> files = Files.list(service.folder())) {
            assertThat(files.map(file -> file.getFileName().toString())).noneMatch(name -> name.contains("partial"));
        }
    }

    @Test
    void unknown_parameters_and_other_methods_are_refused() {
        assertThat(service.get("/v1/backup?gzip=1").code()).isEqualTo("unknown-parameter");
        assertThat(service.post("/v1/backup", "{}").code()).isEqualTo("method-not-allowed");
    }

    @Test
    void the_backup_is_for_those_who_run_the_service() {
        assertThat(RunningService.routes(service.laboratory()).routes().stream()
            .filter(route -> route.path().equals("/v1/backup")).map(Route::scope)).containsExactly(Scope.ADMIN);
    }
}
