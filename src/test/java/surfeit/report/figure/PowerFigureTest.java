package surfeit.report.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.element.Element;
import surfeit.report.figure.PowerCurves.Curve;
import surfeit.report.figure.PowerCurves.Point;
import surfeit.segregation.plan.MeasurementPlan;
import surfeit.segregation.plan.ParticleScatter;
import surfeit.segregation.plan.PlanGoal;
import surfeit.segregation.plan.Planner;
import surfeit.segregation.plan.WantedShift;
import surfeit.spot.Sample;

class PowerFigureTest {

    private static PowerCurves plan(Curve... curves) {
        return new PowerCurves("Cu enriched by a factor (odds) of 1.5", "Scatter invented.", 0.8, List.of(curves),
            List.of("A note."));
    }

    @Test
    void curves_rise_to_the_wanted_chance_at_the_number_the_key_tells() {
        Picture picture = Picture.of(PowerFigure.of(plan(
            new Curve("3 spots on each particle", List.of(new Point(3, 0.4), new Point(5, 0.7), new Point(8, 0.85),
            new Point(10, 0.9))),
            new Curve("1 spot on each particle", List.of(new Point(3, 0.2), new Point(10, 0.6))))).svg()).isProper();
        assertThat(picture.allText()).contains("particles measured (number)", "chance to show it, %", "wanted: 80 %",
            "80 % from 8 particles on", "80 % not reached up to 10 particles", "3 spots on each particle", "A note.");
        double[] points = Picture.points(picture.drawn("polyline", "s-text").get(0));
        assertThat(points[0]).isCloseTo(picture.onAxis(3, "2", "10"), within(0.1));
        assertThat(points[1] - points[7]).as("50 percent on the way up").isCloseTo(
            (picture.heightOf("40") - picture.heightOf("60")) / 20 * 50, within(0.1));
    }

    @Test
    void a_plan_draws_its_own_curve_and_says_what_it_takes() {
        Nominal nominal = NominalText.parse("Ag:60.1,Cu:39.9", Basis.ATOMIC);
        MeasurementPlan plan = new Planner().plan(PlanGoal.of(Element.of("Cu"), WantedShift.factor(1.4)),
            Sample.of(Optional.empty(), Optional.of(nominal)), nominal, ParticleScatter.ofLogOdds(0.15, 0.15));
        Picture picture = Picture.of(PowerFigure.of(PowerCurves.of(plan)).svg()).isProper();
        assertThat(picture.title()).isEqualTo("Cu enriched by a factor of 1.4: chance to show it");
        assertThat(picture.allText()).contains("3 spots on each particle", "Nominal 39.9 at%", "(log odds)",
            "80 % from " + plan.particles().orElseThrow() + " particles on");
        assertThat(picture.description()).contains("80 % from " + plan.particles().orElseThrow() + " particles on");
    }

    @Test
    void many_particles_are_drawn_on_a_logarithmic_axis() {
        List<Point> points = new ArrayList<>();
        for (int particles = 3; particles <= 3000; particles += 37) {
            points.add(new Point(particles, 1 - 1.0 / particles));
        }
        Picture picture = Picture.of(PowerFigure.of(plan(new Curve("1 spot", points))).svg()).isProper();
        double[] line = Picture.points(picture.drawn("polyline", "s-text").get(0));
        assertThat(line[0]).isCloseTo(picture.onLogAxis(3, "10", "1000"), within(0.1));
    }

    @Test
    void curves_that_do_not_rise_and_chances_beyond_one_are_refused() {
        assertThatThrownBy(() -> new Curve("x", List.of(new Point(5, 0.5), new Point(5, 0.6))))
            .hasMessageContaining("got 5 after 5");
        assertThatThrownBy(() -> new Point(3, 1.2)).hasMessageContaining("got 3 and 1.2");
        assertThatThrownBy(() -> plan()).hasMessageContaining("at least one curve");
    }
}
