package surfeit.http;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import surfeit.composition.Nominal;
import surfeit.element.Element;
import surfeit.http.json.SignalDepthDocument;
import surfeit.http.json.SignalDepthRequest;
import surfeit.lab.Laboratory;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.report.figure.DepthFigure;
import surfeit.xray.ForeignSource;
import surfeit.xray.ProfileCache;
import surfeit.xray.RecentResults;
import surfeit.xray.SignalDepthQuery;
import surfeit.xray.SignalDepths;

/** Where the X-rays of a composition come from, at one or more beam energies. */
final class SignalDepthRoutes {
    /** Questions whose answers are kept, the latest asked; an answer is some 10 kB. Judgement. */
    private static final int ANSWERS_KEPT = 200;

    private final Laboratory laboratory;
    private final ProfileCache profiles = new ProfileCache();
    private final RecentResults<SignalDepthQuery, SignalDepths> answers = new RecentResults<>(ANSWERS_KEPT);

    SignalDepthRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    List<Route> routes() {
        return List.of(Route.post("/v1/signal-depths", Scope.READ).suffixed(Form.JSON, Form.SVG).takes(Form.JSON)
            .to(this::depths));
    }

    private void depths(Exchange exchange) throws IOException {
        SignalDepthRequest request;
        try (Body body = exchange.body(exchange.bodyForm())) {
            request = SignalDepthRequest.read(body.open());
        }
        SignalDepthQuery query = request.query(nominal(request), ForeignSource.allElements());
        SignalDepths depths = answers.get(query, () -> SignalDepths.of(query, profiles));
        if (exchange.form() == Form.SVG) {
            exchange.figure(DepthFigure.of(depths, subject(request, query)));
        } else {
            exchange.json(200, json -> SignalDepthDocument.write(json, depths));
        }
    }

    /** The alloy's name in the catalogue, or its elements with the main one first. */
    private static String subject(SignalDepthRequest request, SignalDepthQuery query) {
        return request.nominal().isEmpty() ? request.alloy().orElseThrow()
            : query.material().massFractions().entrySet().stream()
                .sorted(Map.Entry.<Element, Double>comparingByValue().reversed()).map(part -> part.getKey().symbol())
                .collect(Collectors.joining("-"));
    }

    private Nominal nominal(SignalDepthRequest request) {
        return request.nominal().orElseGet(() -> {
            try {
                return laboratory.alloy(request.alloy().orElseThrow()).alloy().nominal();
            } catch (ProblemException e) {
                throw new ProblemException(e.problem() == Problem.NOT_FOUND ? Problem.ALLOY_UNKNOWN : e.problem(),
                    e.getMessage());
            }
        });
    }
}
