package surfeit.http;

import java.io.IOException;
import java.util.List;
import surfeit.composition.Nominal;
import surfeit.element.Element;
import surfeit.http.json.PlanDocument;
import surfeit.http.json.PlanRequest;
import surfeit.lab.Laboratory;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.segregation.MeasurementPlan;
import surfeit.segregation.ParticleScatter;
import surfeit.segregation.PlanException;
import surfeit.segregation.Planner;
import surfeit.spot.Sample;

/** How many particles and spots show a wanted shift, or what shift a given number can show. */
final class PlanRoutes {
    private final Laboratory laboratory;
    private final Planner planner = new Planner();

    PlanRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    List<Route> routes() {
        return List.of(Route.post("/v1/plans", Scope.READ).takes(Form.JSON).to(this::plan));
    }

    private void plan(Exchange exchange) throws IOException {
        PlanRequest request;
        try (Body body = exchange.body(exchange.bodyForm())) {
            request = PlanRequest.read(body.open());
        }
        MeasurementPlan plan;
        try {
            plan = request.pilot().isPresent()
                ? laboratory.plan(request.goal(), request.pilot().get().sample(), request.pilot().get().by(), request.pilot().get().group())
                : fromNumbers(request);
        } catch (PlanException e) {
            throw new ProblemException(Problem.VALUE_OUT_OF_RANGE, e.getMessage());
        }
        exchange.json(200, json -> PlanDocument.write(json, plan));
    }

    private MeasurementPlan fromNumbers(PlanRequest request) {
        Sample sample = request.sample().orElseThrow();
        Nominal nominal = laboratory.nominalOf(sample);
        PlanRequest.Scatter scatter = request.scatter().orElseThrow(() -> new PlanException("Expected \"scatter\" beside \"sample\": how much "
            + "particles differ and how much spots on one particle do. A pilot of three particles tells it."));
        ParticleScatter stated = scatter.relative()
            ? ParticleScatter.ofRelative(scatter.between(), scatter.within(), fraction(nominal, request.goal().element()))
            : ParticleScatter.ofLogOdds(scatter.between(), scatter.within());
        return planner.plan(request.goal(), sample, nominal, stated);
    }

    private static double fraction(Nominal nominal, Element element) {
        int at = nominal.elements().indexOf(element);
        if (at < 0) {
            throw new PlanException("Expected an element of the nominal, one of " + nominal.elements() + ", got " + element + ".");
        }
        return nominal.resolve().middle(at);
    }
}
