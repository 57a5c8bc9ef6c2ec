package surfeit.http;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.Alloy;
import surfeit.element.Element;
import surfeit.element.UnknownElementException;
import surfeit.http.json.AlloyDocuments;
import surfeit.http.json.AlloyJson;
import surfeit.http.json.ElementDocument;
import surfeit.lab.Change;
import surfeit.lab.Laboratory;
import surfeit.lab.Names;
import surfeit.lab.PageRequest;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.StoredAlloy;
import surfeit.xray.BeamEnergy;

/** The catalogue: nominal alloys, and the elements with the figures the service calculates with. */
final class CatalogueRoutes {
    private final Laboratory laboratory;

    CatalogueRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    List<Route> routes() {
        return List.of(
            Route.get("/v1/alloys", Scope.READ).parameters("page_size", "cursor").to(this::list),
            Route.get("/v1/alloys/{alloy}", Scope.READ).to(this::read),
            Route.put("/v1/alloys/{alloy}", Scope.WRITE).to(this::put),
            Route.get("/v1/elements/{symbol}", Scope.READ).parameters("beam_energy_kev").to(this::element));
    }

    private void list(Exchange exchange) throws IOException {
        if (exchange.answer().unchanged(laboratory.eventLog().range().last())) {
            return;
        }
        PageRequest page = exchange.page();
        List<StoredAlloy> rest = laboratory.alloys().stream()
            .filter(stored -> page.after().map(after -> stored.alloy().id().compareTo(after) > 0).orElse(true))
            .toList();
        List<StoredAlloy> items = rest.subList(0, Math.min(page.size(), rest.size()));
        Optional<String> last = rest.size() > items.size()
            ? Optional.of(items.get(items.size() - 1).alloy().id()) : Optional.empty();
        var next = exchange.next(last);
        exchange.answer().json(200, json -> AlloyDocuments.write(json, items, next));
    }

    private void read(Exchange exchange) throws IOException {
        StoredAlloy stored = laboratory.alloy(exchange.path("alloy"));
        if (!exchange.answer().unchanged(stored.revision())) {
            exchange.answer().json(200, json -> AlloyDocuments.write(json, stored));
        }
    }

    private void put(Exchange exchange) throws IOException {
        String id = exchange.path("alloy");
        if (!Names.isSampleName(id)) {
            throw new ProblemException(
                Problem.NAME_INVALID, "An alloy is named with 1 to 64 of the characters A-Z a-z 0-9 . _ - and not "
                + "with dots only, got \"" + id + "\".");
        }
        Alloy alloy;
        try (Body body = exchange.body().receive()) {
            alloy = AlloyJson.read(id, body.open());
        }
        Change<StoredAlloy> change = laboratory.defineAlloy(alloy, exchange.expectation(), exchange.occasion());
        exchange.answer().unchanged(change.now().revision());
        exchange.answer().header("Location", "/v1/alloys/" + id);
        exchange.answer().json(change.kind() == Change.Kind.CREATED ? 201 : 200,
            json -> AlloyDocuments.write(json, change.now()));
    }

    private void element(Exchange exchange) throws IOException {
        Element element;
        try {
            element = Element.of(exchange.path("symbol"));
        } catch (UnknownElementException e) {
            throw new ProblemException(Problem.NOT_FOUND, e.getMessage());
        }
        OptionalDouble beamEnergyKev = exchange.parameters().number("beam_energy_kev", BeamEnergy::check);
        if (!exchange.answer().unchanged(element.atomicNumber())) {
            exchange.answer().json(200, json -> ElementDocument.write(json, element, beamEnergyKev));
        }
    }
}
