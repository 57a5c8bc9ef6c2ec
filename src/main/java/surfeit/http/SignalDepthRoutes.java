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
import surfeit.xray.SurfaceReadings;

/** Where the X-rays of a composition come from, at one or more beam energies. */
final class SignalDepthRoutes {
    /** Questions whose answers are kept, the latest asked; an answer is some 10 kB. Judgement. */
    private static final int ANSWERS_KEPT = 200;

    private final Laboratory laboratory;
    private final ProfileCache profiles = new ProfileCache();
    private final RecentResults<SurfaceReadings.Question, SurfaceReadings> answers = new RecentResults<>(ANSWERS_KEPT);

    SignalDepthRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    List<Route> routes() {
        return List.of(Route.post("/v1/signal-depths", Scope.READ).suffixed(Form.JSON, Form.SVG).takes(Form.JSON)
            .to(this::depths));
    }

    private void depths(Exchange exchange) throws IOException {
        SignalDepthRequest request;
        try (Body body = exchange.body().receive()) {
            request = SignalDepthRequest.read(body.open());
        }
        SurfaceReadings.Question question = request.question(this::nominal, ForeignSource.allElements());
        SurfaceReadings readings = answers.get(question, () -> SurfaceReadings.of(question, profiles));
        if (exchange.form() == Form.SVG) {
            exchange.answer().figure(DepthFigure.of(readings.depths(), subject(request, question.depths())));
        } else {
            exchange.answer().json(200, json -> SignalDepthDocument.write(json, readings));
        }
    }

    /** The alloy's name in the catalogue, or its elements with the main one first. */
    private static String subject(SignalDepthRequest request, SignalDepthQuery query) {
        return request.alloyName().orElseGet(() -> query.material().massFractions().entrySet().stream()
            .sorted(Map.Entry.<Element, Double>comparingByValue().reversed()).map(part -> part.getKey().symbol())
            .collect(Collectors.joining("-")));
    }

    private Nominal nominal(String alloy) {
        try {
            return laboratory.alloy(alloy).alloy().nominal();
        } catch (ProblemException e) {
            throw new ProblemException(e.problem() == Problem.NOT_FOUND ? Problem.ALLOY_UNKNOWN : e.problem(),
                e.getMessage());
        }
    }
}
