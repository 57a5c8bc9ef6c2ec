package surfeit.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import surfeit.lab.TokenScope;

/** The Python module of {@code shared/clients} against the service. */
class PythonClientTest {
    @TempDir
    Path folder;
    private RunningService service;

    @BeforeEach
    void start() throws IOException {
        ClientRun.needs("python3");
        service = RunningService.start();
        Files.writeString(folder.resolve("powder.csv"), InventedPowder.WIDE);
        Files.writeString(folder.resolve("etched.csv"), InventedPowder.ETCHED);
        Files.writeString(folder.resolve("Pulver ä.csv"), InventedPowder.semicolon());
    }

    @AfterEach
    void stop() {
        if (service != null) {
            service.close();
        }
    }

    private String python(String program, String token) throws Exception {
        Map<String, String> where = new HashMap<>(Map.of("SURFEIT_URL", service.server().address()));
        if (!token.isEmpty()) {
            where.put("SURFEIT_TOKEN", token);
        }
        ClientRun run = ClientRun.of(folder, where,
            List.of("python3", "-W", "error", "-c", "from surfeit import *\nlab = Lab()\n" + program));
        assertThat(run.code()).as(run.out()).isZero();
        return run.out().strip();
    }

    private String python(String program) throws Exception {
        return python(program, "");
    }

    @Test
    void a_sample_is_described_filled_and_answered() throws Exception {
        assertThat(python("""
            lab.put_sample("lot-7", {"alloy": "ag-cu-eutectic"})
            report = lab.post_table("lot-7", "powder.csv")
            again = lab.post_table("lot-7", "powder.csv")
            other = lab.post_table("lot-7", "Pulver ä.csv")
            print(report["accepted_count"], again == report, other["unchanged_count"])
            print(lab.segregation("lot-7")["groups"][0]["elements"][1]["verdict"])
            print(lab.report("lot-7").splitlines()[0])
            print([sample["sample"] for sample in lab.samples()], lab.sample("lot-7")["revision"])
            print(sum(1 for spot in lab.spots("lot-7", page_size=2)))
            """)).isEqualTo("9 True 9\nenriched\n# Sample lot-7: enrichment and depletion at the surface\n"
            + "['lot-7'] 2\n9");
    }

    @Test
    void spots_are_asked_without_being_recorded_compared_frozen_planned_and_streamed() throws Exception {
        assertThat(python("""
            for name, file in (("as-made", "powder.csv"), ("etched", "etched.csv")):
                lab.put_sample(name, {"alloy": "ag-cu-eutectic"})
                lab.post_table(name, file)
            spots = [{"label": str(i), "particle": "P%d" % i, "elements": {"Ag": 21 + i / 10, "Cu": 79 - i / 10}}
                     for i in range(4)]
            print(lab.interpret({"alloy": "ag-cu-eutectic"}, spots)["groups"][0]["elements"][1]["verdict"])
            print(lab.compare("as-made", "etched")["features"][0]["state"])
            frozen = lab.freeze("etched", key="report-1")
            lab.put_sample("etched", {"alloy": "ag-cu-eutectic", "description": "etched"}, revision=2)
            print(frozen["id"], lab.freeze("etched", key="report-1") == frozen, lab.frozen(frozen["id"])["stale"])
            print(len(lab.plan({"sample": {"alloy": "ag-cu-eutectic"}, "element": "Cu", "wanted_odds_ratio": 2,
                                "scatter": {"between_log_odds": 0.15, "within_log_odds": 0.15}})) > 3)
            rows = list(lab.results(sample="etched", element="Cu"))
            print(len(rows), rows[0]["element"], sum(row["atomic_percent"] for row in rows) > 100)
            """)).isEqualTo("enriched\ngone\nint_0001 True True\nTrue\n6 Cu True");
    }

    @Test
    void a_refusal_names_every_fault_at_its_place() throws Exception {
        Files.writeString(folder.resolve("bad.csv"), "label;Ag at%;Cu at%\n1;60,1;39.9\n2;60,2;x\n");
        assertThat(python("""
            lab.put_sample("lot-7", {"alloy": "ag-cu-eutectic"})
            try:
                lab.post_table("lot-7", "bad.csv")
            except Refused as refusal:
                print(refusal.status, refusal.code)
                first = refusal.faults[0]
                print(len(refusal.faults), first.startswith("line 2 column 3 (Cu at%) "), '"39.9"' in first)
            try:
                lab.sample("../tokens")
            except Refused as refusal:
                print(refusal.code)
            """)).isEqualTo("422 mixed-decimal-marks\n2 True True\nmalformed-request");
    }

    @Test
    void a_token_is_shown_and_a_missing_service_is_told_from_a_refusal() throws Exception {
        String token = service.token("python", TokenScope.READ);
        assertThat(python("print(list(lab.samples()))", token)).isEqualTo("[]");
        assertThat(python("""
            for asked in (lab, Lab("http://127.0.0.1:9")):
                try:
                    list(asked.samples())
                except (Refused, Away) as problem:
                    print(type(problem).__name__, getattr(problem, "code", None))
            """)).isEqualTo("Refused token-missing\nAway None");
    }
}
