package surfeit.http;

import com.fasterxml.jackson.core.JsonGenerator;
import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import surfeit.http.json.JsonFormat;
import surfeit.lab.Laboratory;
import surfeit.lab.PageRequest;
import surfeit.lab.StoredSpot;

/** Flat rows, one per spot and element, for dashboards and statistics programs. */
final class ResultRoutes {
    private final Laboratory laboratory;

    ResultRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    List<Route> routes() {
        return List.of(
            Route.get("/v1/results", Scope.READ).suffixed(Form.JSON, Form.CSV, Form.NDJSON)
                .parameters(ResultQuery.PARAMETERS).parameters("page_size", "cursor").to(this::list));
    }

    private void list(Exchange exchange) throws IOException {
        ResultQuery query = ResultQuery.of(exchange.parameters());
        query.sample().ifPresent(laboratory::sample);
        if (exchange.unchanged(laboratory.eventRange().last())) {
            return;
        }
        switch (exchange.form()) {
            case CSV -> csv(exchange, query);
            case NDJSON -> ndjson(exchange, query);
            default -> page(exchange, query);
        }
    }

    private void csv(Exchange exchange, ResultQuery query) throws IOException {
        try (CsvWriter csv = CsvWriter.builder()
                .build(new OutputStreamWriter(exchange.stream(Form.CSV.contentType()), StandardCharsets.UTF_8))) {
            csv.writeRecord(ResultColumns.names());
            query.forEachSpot(laboratory, rows -> rows.forEach(row -> csv.writeRecord(ResultColumns.cells(row))));
        }
    }

    private void ndjson(Exchange exchange, ResultQuery query) throws IOException {
        try (OutputStream out = exchange.stream(Form.NDJSON.contentType());
             JsonGenerator json = JsonFormat.lines(out)) {
            query.forEachSpot(laboratory, rows -> rows.forEach(row -> {
                try {
                    ResultColumns.write(json, row);
                    json.writeRaw('\n');
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }));
        }
    }

    private void page(Exchange exchange, ResultQuery query) throws IOException {
        PageRequest page = exchange.page();
        Wanted wanted = new Wanted(page);
        query.forEachSpot(laboratory, wanted::take);
        Optional<String> next = exchange.next(wanted.next());
        exchange.json(200, json -> {
            json.writeStartObject();
            json.writeArrayFieldStart("items");
            for (ResultRow row : wanted.rows) {
                ResultColumns.write(json, row);
            }
            json.writeEndArray();
            if (next.isPresent()) {
                json.writeStringField("next", next.get());
            } else {
                json.writeNullField("next");
            }
            json.writeEndObject();
        });
    }

    /** Collects the rows of one page, whole spots at a time. */
    private static final class Wanted {
        private final PageRequest page;
        private final List<ResultRow> rows = new ArrayList<>();
        private boolean more;
        private String last = "";

        Wanted(PageRequest page) {
            this.page = page;
        }

        void take(List<ResultRow> spot) {
            StoredSpot stored = spot.get(0).stored();
            if (page.after().isPresent() && !isAfter(stored, page.after().get())) {
                return;
            }
            if (rows.size() < page.size()) {
                rows.addAll(spot);
                last = stored.sample() + "/" + stored.id();
            } else {
                more = true;
            }
        }

        Optional<String> next() {
            return more ? Optional.of(last) : Optional.empty();
        }

        /** By order and not by finding it again: the last spot of a page may have been withdrawn since. */
        private static boolean isAfter(StoredSpot stored, String key) {
            int slash = key.indexOf('/');
            if (slash < 0) {
                throw Cursor.mismatch();
            }
            int order = stored.sample().compareTo(key.substring(0, slash));
            return order > 0 || order == 0 && Cursor.spotNumber(stored.id()) > Cursor.spotNumber(key.substring(slash + 1));
        }
    }
}
