package surfeit.bench;

import static org.assertj.core.api.Assertions.assertThat;

import io.javalin.Javalin;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import surfeit.element.Element;
import surfeit.element.ElementTable;

/** How times and rates grow with spots, elements and clients. Invented numbers. */
@Tag("bench")
class GrowthBenchmarkTest {
    private static final int[] SPOTS = {100, 1000, 10_000, 100_000, Integer.getInteger("surfeit.bench.spots", 1_000_000)};
    private static final int[] ELEMENTS = {2, 4, 8, 16, 32, 64};
    private static final int[] CLIENTS = {1, 4, 16, 64, 256, 1024};
    private static final int PARTICLES = 20;
    private static final int TAKES = 5;

    /** Median of a few takes after one that warms up, in ms. */
    private static double millis(Runnable work) {
        double[] takes = new double[TAKES];
        work.run();
        for (int i = 0; i < TAKES; i++) {
            long start = System.nanoTime();
            work.run();
            takes[i] = (System.nanoTime() - start) / 1e6;
        }
        return InTurns.median(takes);
    }

    @Test
    void by_spots() throws Exception {
        Curves curves = new Curves("growth-spots", "Time by number of spots", "spots", "ms",
            List.of("import", "segregation", "not changed"));
        try (BenchService service = new BenchService()) {
            for (int spots : SPOTS) {
                String path = "/v1/samples/of" + spots;
                byte[] table = BenchService.table("s", spots, PARTICLES);
                service.put(path, BenchService.SAMPLE);
                long start = System.nanoTime();
                service.post(path + "/spots", "text/csv", table);
                double imported = (System.nanoTime() - start) / 1e6;
                String tag = service.get(path + "/segregation").headers().firstValue("ETag").orElseThrow();
                byte[] conditional = LoadDriver.request("GET", path + "/segregation", "", "If-None-Match: " + tag);
                curves.add(spots, imported, millis(() -> service.get(path + "/segregation")),
                    LoadDriver.run(service.port(), 1, 200, number -> conditional).p50Ms());
            }
            assertThat(service.laboratory().sample("of100").spotCount()).isEqualTo(100);
        }
        curves.write();
    }

    @Test
    void by_elements() throws Exception {
        Curves curves = new Curves("growth-elements", "Time of one interpretation of 20 spots by number of elements", "elements", "ms",
            List.of("interpretation"));
        try (BenchService service = new BenchService()) {
            List<String> symbols = ElementTable.standard().all().stream().map(Element::symbol).skip(2).limit(64).toList();
            for (int elements : ELEMENTS) {
                byte[] request = LoadDriver.request("POST", "/v1/interpretations", question(symbols.subList(0, elements)));
                LoadDriver.run(service.port(), 1, 20, number -> request);
                curves.add(elements, LoadDriver.run(service.port(), 1, 60, number -> request).p50Ms());
            }
        }
        curves.write();
        assertThat(curves).isNotNull();
    }

    private static String question(List<String> symbols) {
        StringBuilder body = new StringBuilder("{\"sample\": {\"nominal\": {\"unit\": \"at%\", \"elements\": ")
            .append(values(symbols, 0)).append("}}, \"unit\": \"at%\", \"spots\": [");
        for (int i = 0; i < PARTICLES; i++) {
            body.append(i == 0 ? "" : ",").append("{\"label\": \"s").append(i).append("\", \"particle\": \"P").append(i / 5)
                .append("\", \"elements\": ").append(values(symbols, i + 1)).append('}');
        }
        return body.append("]}").toString();
    }

    private static String values(List<String> symbols, int seed) {
        StringBuilder values = new StringBuilder("{");
        for (int i = 0; i < symbols.size(); i++) {
            double value = 100.0 / symbols.size() * (seed == 0 ? 1 : 1 + 0.01 * ((seed * 31 + i * 17) % 7 - 3));
            values.append(i == 0 ? "" : ", ").append(String.format(Locale.ROOT, "\"%s\": %.6f", symbols.get(i), value));
        }
        return values.append('}').toString();
    }

    @Test
    void by_clients() throws Exception {
        Curves rates = new Curves("growth-clients", "Rate by number of clients", "clients", "1/s",
            List.of("fixed answer", "not changed", "interpretation", "durable post"));
        Curves latencies = new Curves("growth-clients-p99", "p99 by number of clients", "clients", "ms",
            List.of("fixed answer", "not changed", "interpretation", "durable post"));
        Javalin bare = BenchService.bareServer(new byte[4096], "{}");
        try (BenchService service = new BenchService()) {
            service.put("/v1/samples/posts", BenchService.SAMPLE);
            service.put("/v1/samples/some", BenchService.SAMPLE);
            service.post("/v1/samples/some/spots", "text/csv", BenchService.table("s", 30, 6));
            String tag = service.get("/v1/samples/some/segregation").headers().firstValue("ETag").orElseThrow();
            byte[] conditional = LoadDriver.request("GET", "/v1/samples/some/segregation", "", "If-None-Match: " + tag);
            byte[] interpretation = LoadDriver.request("POST", "/v1/interpretations", question(List.of("Ag", "Cu", "Zn", "Sn")));
            byte[] fixed = LoadDriver.request("GET", "/fixed", "");
            AtomicInteger label = new AtomicInteger();
            for (int clients : CLIENTS) {
                int few = Math.max(500, 2 * clients);
                LoadDriver.Load[] loads = {LoadDriver.run(bare.port(), clients, 10 * few, number -> fixed),
                    LoadDriver.run(service.port(), clients, 5 * few, number -> conditional),
                    LoadDriver.run(service.port(), clients, few, number -> interpretation),
                    LoadDriver.run(service.port(), clients, few, number -> LoadDriver.request("POST", "/v1/samples/posts/spots",
                        "{\"unit\": \"at%\", \"spots\": [{\"label\": \"s" + label.incrementAndGet()
                            + "\", \"elements\": {\"Ag\": 60.2, \"Cu\": 39.8}}]}"))};
                rates.add(clients, loads[0].perSecond(), loads[1].perSecond(), loads[2].perSecond(), loads[3].perSecond());
                latencies.add(clients, loads[0].p99Ms(), loads[1].p99Ms(), loads[2].p99Ms(), loads[3].p99Ms());
            }
            assertThat(service.laboratory().sample("posts").spotCount()).isEqualTo(label.get());
        } finally {
            bare.stop();
        }
        rates.write();
        latencies.write();
    }
}
