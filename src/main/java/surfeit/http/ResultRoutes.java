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
        if (exchange.answer().unchanged(laboratory.eventLog().range().last())) {
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
                .build(new OutputStreamWriter(exchange.answer().stream(Form.CSV.contentType()), StandardCharsets.UTF_8))) {
            csv.writeRecord(ResultColumns.names());
            query.forEachSpot(laboratory, Optional.empty(), rows -> {
                rows.forEach(row -> csv.writeRecord(ResultColumns.cells(row)));
                return true;
            });
        }
    }

    private void ndjson(Exchange exchange, ResultQuery query) throws IOException {
        try (OutputStream out = exchange.answer().stream(Form.NDJSON.contentType());
             JsonGenerator json = JsonFormat.lines(out)) {
            query.forEachSpot(laboratory, Optional.empty(), rows -> {
                try {
                    for (ResultRow row : rows) {
                        ResultColumns.write(json, row);
                        json.writeRaw('\n');
                    }
                    return true;
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        }
    }

    private void page(Exchange exchange, ResultQuery query) throws IOException {
        PageRequest page = exchange.page();
        Wanted wanted = new Wanted(page.size());
        query.forEachSpot(laboratory, page.after().map(ResultQuery.Position::of), wanted::take);
        Optional<String> next = exchange.next(wanted.next());
        exchange.answer().json(200, json -> {
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

    /** Collects the rows of one page, whole spots at a time, and looks one spot further. */
    private static final class Wanted {
        private final int size;
        private final List<ResultRow> rows = new ArrayList<>();
        private boolean more;

        Wanted(int size) {
            this.size = size;
        }

        boolean take(List<ResultRow> spot) {
            if (rows.size() >= size) {
                more = true;
                return false;
            }
            return rows.addAll(spot);
        }

        Optional<String> next() {
            return more ? Optional.of(ResultQuery.Position.key(rows.get(rows.size() - 1).stored())) : Optional.empty();
        }
    }
}
