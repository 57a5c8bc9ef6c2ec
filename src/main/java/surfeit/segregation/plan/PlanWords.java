package surfeit.segregation.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.nominal.NominalTrial;
import surfeit.segregation.plan.MeasurementPlan.Given;
import surfeit.segregation.plan.MeasurementPlan.Limit;
import surfeit.segregation.plan.MeasurementPlan.Remedy;
import surfeit.segregation.plan.MeasurementPlan.SpotsRow;
import surfeit.statistics.Power;

/** A plan in sentences, in the order they should be followed. */
record PlanWords(PlanCase planned, OptionalInt particles, List<SpotsRow> bySpots, Optional<Given> given, Limit limit,
                 List<Remedy> remedies, OptionalInt ifScatterIsHigh) {
    /** The result in one sentence. */
    String answer() {
        PlanGoal goal = planned.goal();
        if (particles.isEmpty()) {
            return "No number of particles shows " + wanted() + " at the wanted power: the calibration error alone "
                + "hides " + (limit.smallestFactor().isPresent() ? "factors up to " + factor(limit.smallestFactor().getAsDouble())
                : "every " + direction() + ", however large") + hidden() + ".";
        }
        return count(particles.getAsInt(), "particle") + " with " + count(goal.spotsPerParticle(), "spot")
            + " each show " + wanted() + " at least " + times() + ".";
    }

    /** Where the calibration error would do but a thousand particles do not. */
    private String hidden() {
        boolean calibration = planned.model()
            .cannotBeReached(planned.power(), planned.shift(), planned.goal().spotsPerParticle());
        return calibration ? "" : ", and the scatter is too large for a thousand particles";
    }

    List<String> advice() {
        List<String> advice = new ArrayList<>();
        remedies.stream().filter(remedy -> remedy.kind() != Remedy.Kind.CONTRAST || particles.isEmpty())
            .forEach(remedy -> words(remedy).ifPresent(advice::add));
        moreSpots().ifPresent(advice::add);
        if (!limit.consistentIsReachable()) {
            advice.add(String.format(Locale.ROOT, "\"Consistent\" cannot be shown within an odds ratio of %.3g, "
                + "however many particles; %s.", limit.marginOddsRatio(), limit.smallestMarginOddsRatio().isEmpty()
                ? "no margin is within reach" : String.format(Locale.ROOT, "the smallest margin within reach is %.3g",
                limit.smallestMarginOddsRatio().getAsDouble())));
        }
        return List.copyOf(advice);
    }

    private Optional<String> words(Remedy remedy) {
        boolean fewer = remedy.particles().isPresent()
            && (particles.isEmpty() || remedy.particles().getAsInt() < particles.getAsInt());
        String what = switch (remedy.kind()) {
            case REFERENCE_SPOTS -> "Measure " + PlanCase.REFERENCE_SPOTS
                + " spots on a piece of known composition in the same session";
            case STANDARDS -> "Quantify with standards";
            case CONTRAST -> "Compare with another feature on the same particles in the same session, if that answers "
                + "the question";
        };
        if (fewer) {
            return Optional.of(what + ": " + count(remedy.particles().getAsInt(), "particle")
                + (particles.isEmpty() ? " then show it." : " in place of " + particles.getAsInt() + "."));
        }
        if (particles.isPresent() || remedy.smallestFactor().isEmpty()) {
            return Optional.empty();
        }
        double factor = remedy.smallestFactor().getAsDouble();
        return beats(factor) ? Optional.of(what + ": factors " + beyond(factor) + " come within reach, though not this one.")
            : Optional.empty();
    }

    private boolean beats(double factor) {
        return limit.smallestFactor().isEmpty()
            || Math.abs(Math.log(factor)) < Math.abs(Math.log(limit.smallestFactor().getAsDouble())) * 0.95;
    }

    private String beyond(double factor) {
        return (factor > 1 ? "from " : "down from ") + factor(factor) + " on";
    }

    /** What the given number shows, in one sentence. */
    Optional<String> givenWords() {
        return given.map(this::words);
    }

    private String words(Given own) {
        boolean one = own.particles() == 1;
        String counted = count(own.particles(), "particle") + " with " + count(own.spotsPerParticle(), "spot")
            + (one ? "" : " each");
        if (own.power().isEmpty()) {
            return counted + (one ? " tells" : " tell") + " nothing of the scatter; measure two spots or more on each.";
        }
        String most = own.smallestOddsRatio().isPresent()
            ? "a factor of " + factor(planned.model().factor(Math.log(own.smallestOddsRatio().getAsDouble()))) + " " + times()
            : "none, however large, " + times();
        String only = own.particles() >= Power.FEWEST_PARTICLES ? "" : one
            ? " On this particle only: one particle says nothing about the others."
            : " On these two only: two particles say little about the others.";
        return counted + (one ? " shows " : " show ") + wanted() + " with a chance of "
            + percent(own.power().getAsDouble()) + ", and " + most + "." + only;
    }

    /** Last in the order of advice: what six spots on each would save. */
    private Optional<String> moreSpots() {
        if (particles.isEmpty() || bySpots.size() < 2) {
            return Optional.empty();
        }
        SpotsRow most = bySpots.get(bySpots.size() - 1);
        int spots = planned.goal().spotsPerParticle();
        if (most.particles().isEmpty() || spots >= most.spotsPerParticle()) {
            return Optional.empty();
        }
        int fewer = most.particles().getAsInt();
        return Optional.of(fewer < particles.getAsInt()
            ? "More spots come last: " + most.spotsPerParticle() + " on each make it " + count(fewer, "particle") + " ("
                + most.spots().getAsInt() + " spots) in place of " + particles.getAsInt() + " ("
                + particles.getAsInt() * spots + " spots)."
            : "More spots on each particle save no particle.");
    }

    List<Caveat> caveats() {
        List<Caveat> caveats = new ArrayList<>(planned.caveats());
        if (planned.tests() > 1) {
            caveats.add(Caveat.note("several-tests", "Counted as one of " + planned.tests() + " tests of an answer; "
                + "with fewer elements or groups the same is shown with less."));
        }
        if (Math.abs(planned.shift()) <= planned.margin()) {
            caveats.add(Caveat.note("wanted-within-margin", String.format(Locale.ROOT, "The wanted shift does not pass "
                + "the margin, an odds ratio of %.3g; an answer that shows it may say \"consistent\", with a small shift "
                + "detected.", limit.marginOddsRatio())));
        }
        PlanModel model = planned.model();
        if (Math.max(model.floorShare(0), model.floorShare(planned.shift())) >= NominalTrial.HULL_FLOOR) {
            caveats.add(Caveat.note("minor-element", "So little of " + planned.goal().element() + " lies near the "
                + "additive error of 0.1 mass %; answers then use the wider of two intervals. This plan does so where that is "
                + "expected, not draw by draw, and may be a few points off."));
        }
        if (ifScatterIsHigh.isPresent() && particles.isPresent() && ifScatterIsHigh.getAsInt() > particles.getAsInt()) {
            caveats.add(Caveat.note("scatter-may-be-larger", "Should the scatter be as large as the pilot leaves open "
                + "(one-sided 80 %), it takes " + ifScatterIsHigh.getAsInt() + " particles."));
        }
        return List.copyOf(caveats);
    }

    private String wanted() {
        double shift = planned.shift();
        return String.format(Locale.ROOT, "%s of %s by a factor of %s (an odds ratio of %s)",
            direction(), planned.goal().element(), factor(planned.model().factor(shift)),
            factor(Math.exp(shift)));
    }

    private String direction() {
        return planned.shift() > 0 ? "enrichment" : "depletion";
    }

    private String times() {
        return String.format(Locale.ROOT, "%.0f times out of 100", planned.goal().power() * 100);
    }

    private static String factor(double factor) {
        return String.format(Locale.ROOT, factor >= 10 ? "%.0f" : "%.2f", factor);
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, share > 0.995 ? "over 99 %%" : "%.0f %%", share * 100);
    }

    private static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }
}
