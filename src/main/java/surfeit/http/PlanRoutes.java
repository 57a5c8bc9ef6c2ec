package surfeit.http;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.element.Element;
import surfeit.http.json.PlanDocument;
import surfeit.http.json.PlanRequest;
import surfeit.lab.Laboratory;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.report.figure.PowerCurves;
import surfeit.report.figure.PowerFigure;
import surfeit.segregation.plan.BeamGoal;
import surfeit.segregation.plan.BeamPlanner;
import surfeit.segregation.plan.MeasurementPlan;
import surfeit.segregation.plan.ParticleScatter;
import surfeit.segregation.plan.PlanException;
import surfeit.segregation.plan.PlanGoal;
import surfeit.segregation.plan.Planner;
import surfeit.spot.Sample;
import surfeit.xray.BeamAdvice;

/** How many particles and spots show a wanted shift, what shift a given number can show, and at which beam energy. */
final class PlanRoutes {
    private final Laboratory laboratory;
    private final Planner planner = new Planner();
    private final BeamPlanner beams = new BeamPlanner();

    PlanRoutes(Laboratory laboratory) {
        this.laboratory = laboratory;
    }

    List<Route> routes() {
        return List.of(Route.post("/v1/plans", Scope.READ).suffixed(Form.JSON, Form.SVG).takes(Form.JSON).to(this::plan));
    }

    private void plan(Exchange exchange) throws IOException {
        PlanRequest request;
        try (Body body = exchange.body().receive()) {
            request = PlanRequest.read(body.open());
        }
        try {
            Optional<MeasurementPlan> plan = request.goal().map(goal -> plan(goal, request));
            Optional<BeamAdvice> beam = request.beam().map(goal -> advice(goal, request));
            if (exchange.form() == Form.SVG) {
                exchange.answer().figure(PowerFigure.of(PowerCurves.of(plan.orElseThrow(() -> new PlanException("A power curve is drawn "
                    + "for a wanted shift; got a question of the beam energy alone. Ask for it as JSON.")))));
            } else {
                exchange.answer().json(200, json -> PlanDocument.write(json, plan, beam));
            }
        } catch (PlanException e) {
            throw new ProblemException(Problem.VALUE_OUT_OF_RANGE, e.getMessage());
        } catch (CompositionException e) {
            throw new ProblemException(Problem.of(e), e.getMessage());
        }
    }

    private MeasurementPlan plan(PlanGoal goal, PlanRequest request) {
        return request.pilot().map(pilot -> laboratory.plan(goal, pilot.sample(), pilot.by(), pilot.requireGroup()))
            .orElseGet(() -> fromNumbers(goal, request));
    }

    private BeamAdvice advice(BeamGoal goal, PlanRequest request) {
        Sample sample = request.pilot().map(pilot -> laboratory.sample(pilot.sample()).sample())
            .orElseGet(() -> request.sample().orElseThrow());
        return beams.advise(goal, sample, laboratory.nominalOf(sample));
    }

    private MeasurementPlan fromNumbers(PlanGoal goal, PlanRequest request) {
        Sample sample = request.sample().orElseThrow();
        Nominal nominal = laboratory.nominalOf(sample);
        PlanRequest.Scatter scatter = request.scatter()
            .orElseThrow(() -> new PlanException("Expected \"scatter\" beside \"sample\": how much "
            + "particles differ and how much spots on one particle do. A pilot of three particles tells it."));
        ParticleScatter stated = scatter.relative()
            ? ParticleScatter.ofRelative(scatter.between(), scatter.within(), fraction(nominal, goal.element()))
            : ParticleScatter.ofLogOdds(scatter.between(), scatter.within());
        return planner.plan(goal, sample, nominal, stated);
    }

    private static double fraction(Nominal nominal, Element element) {
        int at = nominal.elements().indexOf(element);
        if (at < 0) {
            throw new PlanException("Expected an element of the nominal, one of " + nominal.elements() + ", got " + element
                + ".");
        }
        return nominal.resolve().middle(at);
    }
}
