package surfeit.report.figure;

import java.util.List;
import java.util.OptionalInt;
import surfeit.report.Digits;
import surfeit.report.Listing;
import surfeit.segregation.plan.MeasurementPlan;

/**
 * How likely studies of growing size show a shift: what a plan hands over to be drawn.
 *
 * @param title    what is planned: {@code Cu enriched by a factor (odds) of 1.5}
 * @param subtitle scatter, calibration error and risk the plan takes for granted, in words
 * @param target   wanted chance, 0 to 1
 * @param curves   one curve per number of spots on each particle, say
 * @param notes    what a reader must know, in sentences
 */
public record PowerCurves(String title, String subtitle, double target, List<Curve> curves, List<String> notes) {

    /** A curve with its name, {@code 3 spots on each particle}; points in rising number of particles. */
    public record Curve(String name, List<Point> points) {
        public Curve {
            points = List.copyOf(points);
            if (points.isEmpty()) {
                throw new IllegalArgumentException("A power curve has at least one point, got none for \"" + name
                    + "\".");
            }
            for (int i = 1; i < points.size(); i++) {
                if (points.get(i).particles() <= points.get(i - 1).particles()) {
                    throw new IllegalArgumentException("The points of a power curve rise in the number of particles, "
                        + "got " + points.get(i).particles() + " after " + points.get(i - 1).particles() + ".");
                }
            }
        }

        /** The smallest number of particles among the points that reaches a chance. */
        OptionalInt reaches(double wanted) {
            return points.stream().filter(point -> point.power() >= wanted).mapToInt(Point::particles).findFirst();
        }

        int largest() {
            return points.get(points.size() - 1).particles();
        }
    }

    /** So many particles show the shift with this chance, 0 to 1. */
    public record Point(int particles, double power) {
        public Point {
            if (particles < 1 || !(power >= 0 && power <= 1)) {
                throw new IllegalArgumentException("A point of a power curve has at least one particle and a power "
                    + "from 0 to 1, got " + particles + " and " + power + ".");
            }
        }
    }

    /** The curve of a plan. */
    public static PowerCurves of(MeasurementPlan plan) {
        boolean up = plan.wantedFactor() > 1;
        String title = plan.element() + (up ? " enriched" : " depleted") + " by a factor of "
            + Digits.setting(plan.wantedFactor()) + ": chance to show it";
        String spots = Listing.count(plan.spotsPerParticle(), "spot") + " on each particle";
        String within = plan.scatter().within().stream()
            .mapToObj(spread -> ", between spots of one " + Digits.plain(spread)).findFirst().orElse("");
        String subtitle = "Nominal " + Digits.nominalPercent(plan.nominal()) + " at%; scatter between particles "
            + Digits.plain(plan.scatter().between()) + within + ", calibration error "
            + Digits.plain(plan.sharedUncertainty()) + " (log odds); risk of a false flag "
            + Digits.setting(plan.alpha()) + " over " + Listing.count(plan.tests(), "test") + ".";
        return new PowerCurves(title, subtitle, plan.power(), List.of(new Curve(spots, plan.curve().stream()
            .map(point -> new Point(point.particles(), Math.min(1, point.power()))).toList())), List.of(plan.answer()));
    }

    public PowerCurves {
        curves = List.copyOf(curves);
        notes = List.copyOf(notes);
        if (curves.isEmpty() || !(target > 0 && target < 1)) {
            throw new IllegalArgumentException("Expected at least one curve and a wanted power above 0 and below 1, "
                + "got " + curves.size() + " and " + target + ".");
        }
    }
}
