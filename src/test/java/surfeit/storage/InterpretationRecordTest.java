package surfeit.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.lab.AuditCheck;
import surfeit.lab.AuditEntry;
import surfeit.lab.EventFilter;
import surfeit.lab.Expectation;
import surfeit.lab.FrozenAnswer;
import surfeit.lab.InputChange;
import surfeit.lab.LabEvent;
import surfeit.lab.Laboratory;
import surfeit.lab.MadeWith;
import surfeit.lab.PageRequest;
import surfeit.lab.RepeatKey;
import surfeit.lab.Segregation;
import surfeit.lab.StoredInterpretation;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.blocks.SpotSource;

/** Frozen answers on record: whole or not at all, told in the audit, carried in a backup. Values are invented. */
@OnBothEngines
class InterpretationRecordTest {
    private static final MadeWith MADE_WITH =
        MadeWith.of("a method", 3, "9.9", Map.of("reference/elements.csv", "0".repeat(64)));

    @Parameter
    RecordEngine engine;
    @TempDir
    Path folder;

    @BeforeEach
    void record() {
        try (LabBench bench = LabBench.in(engine, data()).describe("A7")) {
            bench.post("A7", LabBench.spots("P", 4));
            freeze(bench.laboratory());
            bench.laboratory().withdraw("spt_0001", "charging", Expectation.NONE, LabBench.ANNA);
        }
    }

    private Path data() {
        return folder.resolve("data");
    }

    private static StoredInterpretation freeze(Laboratory lab) {
        return lab.interpretations().freeze("A7", GroupBy.FEATURE, InterpretationRecordTest::text, LabBench.ANNA);
    }

    private static FrozenAnswer text(Segregation answer, SpotSource spots) {
        return new FrozenAnswer(MADE_WITH, new TreeMap<>(Map.of("json", "{\"spots\":"
            + answer.interpretation().spotCount() + ",\"µ\":\"größer\"}", "md", "# Probe\n")));
    }

    @Test
    void what_was_frozen_is_read_back_whole_after_opening_again() {
        try (LabBench bench = LabBench.in(engine, data())) {
            StoredInterpretation kept = bench.laboratory().interpretations().find("int_0001");

            assertThat(kept).returns("A7", StoredInterpretation::sample)
                .returns(GroupBy.FEATURE, StoredInterpretation::by)
                .returns(LabBench.ANNA, StoredInterpretation::stored)
                .returns(MADE_WITH, StoredInterpretation::madeWith)
                .returns(Optional.of(LabBench.AG_CU), StoredInterpretation::alloy);
            assertThat(kept.inputs().sample()).isEqualTo(2);
            assertThat(kept.inputs().alloy()).hasValue(0);
            assertThat(kept.stale()).contains(new InputChange(InputChange.Input.SAMPLE, 3, "spot withdrawn",
                LabBench.ANNA, Optional.of("spt_0001")));
            assertThat(bench.laboratory().interpretations().text("int_0001", "json"))
                .isEqualTo("{\"spots\":4,\"µ\":\"größer\"}");
        }
    }

    @Test
    void spots_that_come_while_an_answer_is_made_do_not_wait_for_it_and_are_in_it() throws Exception {
        try (LabBench bench = LabBench.in(engine, data())) {
            AtomicInteger made = new AtomicInteger();
            StoredInterpretation kept = bench.laboratory().interpretations().freeze("A7", GroupBy.FEATURE,
                (answer, spots) -> {
                    if (made.getAndIncrement() == 0) {
                        CompletableFuture.runAsync(() -> bench.post("A7", LabBench.spots("Q", 2))).join();
                    }
                    return text(answer, spots);
                }, LabBench.ANNA);

            assertThat(made).hasValue(2);
            assertThat(kept.inputs().sample()).isEqualTo(bench.laboratory().sample("A7").revision()).isEqualTo(4);
            assertThat(bench.laboratory().interpretations().text(kept.id(), "json")).startsWith("{\"spots\":5,");
            assertThat(kept.stale()).isEmpty();
        }
    }

    @Test
    void the_audit_tells_of_the_freezing_and_of_the_change_after_its_cause() {
        try (LabBench bench = LabBench.in(engine, data())) {
            var rows = bench.laboratory().auditLog().page(PageRequest.first(10)).items();

            assertThat(rows).extracting(AuditEntry::what).containsExactly("sample described", "spots imported",
                "interpretation stored", "spot withdrawn", "interpretation stale");
            assertThat(rows.get(2).detail()).startsWith(
                "int_0001: by feature, revision 2, revision 0 of alloy ag-cu-eutectic; recorded sha256:");
            assertThat(rows.get(4).detail())
                .startsWith("int_0001: spot withdrawn, revision 3 of sample A7; recorded sha256:");
            assertThat(bench.laboratory().auditLog().check().broken()).isEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "UPDATE interpretation_text SET bytes = x'7b7d' WHERE form = 'json'",
        "UPDATE interpretation_text SET form = 'csv' WHERE form = 'md'",
        "DELETE FROM interpretation_text WHERE form = 'md'",
        "INSERT INTO interpretation_text VALUES (1, 'csv', x'00')",
        "UPDATE interpretation SET sample_revision = 3", "UPDATE interpretation SET alloy_revision = 1",
        "UPDATE interpretation SET alloy = 'sn-bi-eutectic'", "UPDATE interpretation SET grouped_by = 'sample'",
        "UPDATE interpretation SET who = 'ben'", "UPDATE interpretation SET recorded = '2026-11-20T12:00:01Z'",
        "UPDATE interpretation SET method = 'another'", "UPDATE interpretation SET method_version = 4",
        "UPDATE interpretation SET program_version = '9.8'", "UPDATE interpretation SET tables = x'00'",
        "UPDATE interpretation SET checksums = x'00'",
        "UPDATE interpretation_stale SET sample_revision = 2",
        "UPDATE interpretation_stale SET sample_revision = NULL, alloy_revision = 1",
        "DELETE FROM interpretation_stale",
        "INSERT INTO interpretation SELECT 2, sample, sample_revision, alloy, alloy_revision, grouped_by, who,"
            + " recorded, method, method_version, program_version, tables, checksums FROM interpretation"})
    void whatever_is_changed_in_the_file_shows_in_the_audit(String tampering) throws Exception {
        engine.change(data(), tampering);

        try (LabBench bench = LabBench.in(engine, data())) {
            assertThat(bench.laboratory().auditLog().check().broken()).map(AuditCheck.Broken::what).get().asString()
                .containsAnyOf("interpretation", "stored interpretations");
        }
    }

    @Test
    void a_change_that_is_taken_back_takes_the_mark_and_its_event_back() {
        try (LabBench bench = LabBench.in(engine, data())) {
            StoredInterpretation second = freeze(bench.laboratory());
            long events = bench.laboratory().eventLog().range().last();

            assertThatThrownBy(() -> bench.laboratory().once(new RepeatKey("anna", "k1", "f"), LabBench.ANNA, lab -> {
                lab.withdraw("spt_0002", "charging", Expectation.NONE, LabBench.ANNA);
                assertThat(lab.interpretations().find(second.id()).stale()).isPresent();
                throw new IllegalStateException("taken back");
            })).hasMessage("taken back");

            assertThat(bench.laboratory().interpretations().find(second.id()).stale()).isEmpty();
            assertThat(bench.laboratory().eventLog().range().last()).isEqualTo(events);
            assertThat(bench.laboratory().auditLog().check().broken()).isEmpty();
        }
    }

    @Test
    void an_answer_that_cannot_be_put_into_words_leaves_nothing() {
        try (LabBench bench = LabBench.in(engine, data())) {
            Map<String, Long> before = bench.rowCounts();

            assertThatThrownBy(() -> bench.laboratory().interpretations().freeze("A7", GroupBy.FEATURE, (answer, spots) -> {
                throw new IllegalStateException("no words");
            }, LabBench.ANNA)).hasMessage("no words");

            assertThat(bench.rowCounts()).isEqualTo(before);
        }
    }

    @Test
    void a_backup_carries_what_was_frozen() {
        Path file = folder.resolve("lab.backup");
        engine.backup(data(), file, LabBench.NOON);
        SqliteRestore.restore(file, folder.resolve("again"), LabBench.NOON);

        try (LabBench was = LabBench.in(engine, data()); LabBench is = LabBench.in(folder.resolve("again"))) {
            assertThat(is.laboratory().interpretations().find("int_0001"))
                .isEqualTo(was.laboratory().interpretations().find("int_0001"));
            assertThat(is.laboratory().interpretations().text("int_0001", "md")).isEqualTo("# Probe\n");
            assertThat(is.laboratory().auditLog().check().broken()).isEmpty();
            assertThat(is.laboratory().events(EventFilter.ALL, 0, 100)).extracting(LabEvent::type)
                .contains(LabEvent.Type.INTERPRETATION_STORED, LabEvent.Type.INTERPRETATION_STALE);
        }
    }
}
