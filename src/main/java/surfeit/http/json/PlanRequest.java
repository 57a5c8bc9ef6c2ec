package surfeit.http.json;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import surfeit.element.Element;
import surfeit.element.UnknownElementException;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.plan.BeamGoal;
import surfeit.segregation.plan.PlanException;
import surfeit.segregation.plan.PlanGoal;
import surfeit.segregation.plan.WantedShift;
import surfeit.spot.Sample;

/**
 * The question how much to measure, as JSON: what is to be shown, and how much particles and spots scatter, from
 * numbers ({@code "sample"} with {@code "scatter"}) or from a group of a sample on record ({@code "pilot"}); beside it or
 * in its place the question at which beam energy ({@code "beam"}).
 *
 * @param goal    the shift to be shown; empty where only the beam energy is asked for
 * @param beam    what a beam energy is wanted for, where that is asked
 * @param sample  the sample to be measured, where no pilot is named
 * @param scatter stated scatter, where no pilot is named
 * @param pilot   a group of a sample on record
 */
public record PlanRequest(Optional<PlanGoal> goal, Optional<BeamGoal> beam, Optional<Sample> sample,
                          Optional<Scatter> scatter, Optional<Pilot> pilot) {

    /** Standard deviations as stated: of the log odds, or relative to the fraction in percent. */
    public record Scatter(double between, double within, boolean relative) {
    }

    /** A sample on record, and one of its groups; without a group it tells nothing of scatter. */
    public record Pilot(String sample, Optional<String> group, GroupBy by) {

        /** The group. @throws PlanException where none is named */
        public String requireGroup() {
            return group.orElseThrow(() -> new PlanException("Expected \"group\" beside the pilot's sample, the "
                + "name of one of its groups."));
        }
    }

    private static final Keys<Fields> KEYS = new Keys<Fields>("a question for a plan")
        .key("sample", (in, fields) -> fields.sample = SampleJson.read(in))
        .key("pilot", (in, fields) -> in.object(Fields.PILOT, fields))
        .key("scatter", (in, fields) -> in.object(Fields.SCATTER, fields))
        .key("beam", (in, fields) -> {
            fields.beamAsked = true;
            fields.beam = BeamGoalJson.read(in);
        })
        .key("element", (in, fields) -> fields.element = in.text())
        .key("wanted_factor", (in, fields) -> fields.factor = in.number(""))
        .key("wanted_odds_ratio", (in, fields) -> fields.oddsRatio = in.number(""))
        .key("spots_per_particle", (in, fields) -> fields.spots = in.number(""))
        .key("particles", (in, fields) -> fields.particles = in.number(""))
        .key("reference_spots", (in, fields) -> fields.references = in.number(""))
        .key("power", (in, fields) -> fields.power = in.number(""))
        .key("tests", (in, fields) -> fields.tests = in.number(""));

    private static final class Fields {
        private static final Keys<Fields> PILOT = new Keys<Fields>("a pilot")
            .key("sample", (in, fields) -> fields.pilotSample = in.text())
            .key("group", (in, fields) -> fields.pilotGroup = in.text())
            .key("by", (in, fields) -> fields.by = SampleJson.oneOf(in, GroupBy.values(), GroupBy::word));
        private static final Keys<Fields> SCATTER = new Keys<Fields>("a scatter")
            .key("between_log_odds", (in, fields) -> fields.between = in.number("log odds"))
            .key("within_log_odds", (in, fields) -> fields.within = in.number("log odds"))
            .key("between_relative_percent", (in, fields) -> fields.betweenRelative = in.number("%"))
            .key("within_relative_percent", (in, fields) -> fields.withinRelative = in.number("%"));

        private Optional<Sample> sample = Optional.empty();
        private Optional<String> pilotSample = Optional.empty();
        private Optional<String> pilotGroup = Optional.empty();
        private Optional<GroupBy> by = Optional.empty();
        private OptionalDouble between = OptionalDouble.empty();
        private OptionalDouble within = OptionalDouble.empty();
        private OptionalDouble betweenRelative = OptionalDouble.empty();
        private OptionalDouble withinRelative = OptionalDouble.empty();
        private boolean beamAsked;
        private Optional<BeamGoal> beam = Optional.empty();
        private Optional<String> element = Optional.empty();
        private OptionalDouble factor = OptionalDouble.empty();
        private OptionalDouble oddsRatio = OptionalDouble.empty();
        private OptionalDouble spots = OptionalDouble.empty();
        private OptionalDouble particles = OptionalDouble.empty();
        private OptionalDouble references = OptionalDouble.empty();
        private OptionalDouble power = OptionalDouble.empty();
        private OptionalDouble tests = OptionalDouble.empty();

        /** Whether more than a beam energy is asked for. */
        private boolean planAsked() {
            return !beamAsked || element.isPresent() || scatter(this).isPresent()
                || Stream.of(factor, oddsRatio, spots, particles, references, power, tests)
                .anyMatch(OptionalDouble::isPresent);
        }
    }

    /** Reads the body. @throws ProblemException with every fault */
    public static PlanRequest read(InputStream body) throws IOException {
        return JsonDocument.read(body, in -> {
            long before = in.faults().count();
            Fields fields = new Fields();
            try {
                in.object(KEYS, fields);
                return in.faults().count() > before ? Optional.empty() : Optional.of(made(fields));
            } catch (PlanException e) {
                throw new ProblemException(Problem.VALUE_OUT_OF_RANGE, e.getMessage());
            }
        });
    }

    private static PlanRequest made(Fields fields) {
        try {
            return new PlanRequest(fields.planAsked() ? Optional.of(goal(fields)) : Optional.empty(), fields.beam,
                fields.sample, scatter(fields), pilot(fields));
        } catch (UnknownElementException e) {
            throw new ProblemException(Problem.UNKNOWN_ELEMENT, e.getMessage());
        }
    }

    private static PlanGoal goal(Fields fields) {
        Element element = Element.of(fields.element.orElseThrow(() -> new PlanException("Expected \"element\", the element to show a "
            + "shift of.")));
        if (fields.factor.isPresent() == fields.oddsRatio.isPresent()) {
            throw new PlanException("Expected either \"wanted_factor\" or \"wanted_odds_ratio\", got "
                + (fields.factor.isPresent() ? "both." : "neither."));
        }
        WantedShift wanted = fields.factor.isPresent() ? WantedShift.factor(fields.factor.getAsDouble())
            : WantedShift.oddsRatio(fields.oddsRatio.getAsDouble());
        return new PlanGoal(element, wanted,
            whole("spots_per_particle", fields.spots).orElse(PlanGoal.DEFAULT_SPOTS_PER_PARTICLE),
            whole("particles", fields.particles), whole("reference_spots", fields.references).orElse(0),
            fields.power.orElse(PlanGoal.DEFAULT_POWER), whole("tests", fields.tests));
    }

    private static OptionalInt whole(String name, OptionalDouble value) {
        if (value.isEmpty()) {
            return OptionalInt.empty();
        }
        double number = value.getAsDouble();
        if (number != Math.rint(number) || Math.abs(number) > Integer.MAX_VALUE) {
            throw new PlanException("Expected a whole number for \"" + name + "\", got " + number + ".");
        }
        return OptionalInt.of((int) number);
    }

    private static Optional<Scatter> scatter(Fields fields) {
        boolean logOdds = fields.between.isPresent() || fields.within.isPresent();
        boolean relative = fields.betweenRelative.isPresent() || fields.withinRelative.isPresent();
        if (logOdds && relative) {
            throw new PlanException("Expected the scatter in log odds or relative in percent, got both.");
        }
        return logOdds ? Optional.of(new Scatter(fields.between.orElse(0), fields.within.orElse(0), false))
            : relative ? Optional.of(new Scatter(fields.betweenRelative.orElse(0) / 100, fields.withinRelative.orElse(0) / 100, true))
            : Optional.empty();
    }

    private static Optional<Pilot> pilot(Fields fields) {
        if (fields.pilotSample.isEmpty()) {
            if (fields.sample.isEmpty()) {
                throw new PlanException("Expected \"sample\" with \"scatter\", or \"pilot\" with the name of a sample on record.");
            }
            return Optional.empty();
        }
        if (fields.sample.isPresent()) {
            throw new PlanException("Expected \"sample\" or \"pilot\", got both.");
        }
        return Optional.of(new Pilot(fields.pilotSample.get(), fields.pilotGroup, fields.by.orElse(GroupBy.FEATURE)));
    }
}
