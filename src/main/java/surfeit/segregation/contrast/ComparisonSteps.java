package surfeit.segregation.contrast;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import surfeit.segregation.answer.Contrast;
import surfeit.segregation.answer.Reason;
import surfeit.spot.Judgement;
import surfeit.statistics.Power;
import surfeit.statistics.RandomPart;

/**
 * What to measure next where two samples cannot be told apart nor shown alike, in words.
 *
 * <p>Numbers of particles are those whose scatter, as seen so far, shows a difference as large as the one seen (at
 * least the margin) four times out of five: {@code s(k)^2 = s^2 k' / k} with k' the harmonic mean of both samples'
 * particles.
 */
record ComparisonSteps(String nameA, String nameB, Judgement judgement) {
    private static final double WANTED_POWER = 0.8;
    private static final int PARTICLES_MOST = 1000;

    /** Advice; empty where every element is settled. */
    Optional<String> of(GroupContrast contrast, Contrast finding) {
        Set<Reason> reasons = EnumSet.noneOf(Reason.class);
        finding.elements().forEach(element -> element.reason().ifPresent(reasons::add));
        if (reasons.isEmpty()) {
            return Optional.empty();
        }
        if (reasons.contains(Reason.NO_REPEAT_AND_NO_SIGMA)) {
            return Optional.of("Measure at least two more spots where there is only one, or give the spots' "
                + "uncertainty.");
        }
        boolean calibration = reasons.contains(Reason.CALIBRATION) || reasons.contains(Reason.CALIBRATION_AND_SCATTER);
        boolean scatter = reasons.contains(Reason.SCATTER) || reasons.contains(Reason.CALIBRATION_AND_SCATTER)
            || reasons.contains(Reason.BETWEEN);
        Optional<String> particles = scatter ? particles(contrast, finding) : Optional.empty();
        String then = particles.map(words -> " Then: " + lowerFirst(words)).orElse("");
        return calibration || particles.isEmpty() ? Optional.of(calibration(contrast) + then) : particles;
    }

    private String calibration(GroupContrast contrast) {
        if (contrast.correlation() > 0) {
            return "Quantify both samples with standards; more spots do not help.";
        }
        String together = "Measure " + nameA + " and " + nameB + " in one session at one beam energy";
        return contrast.a().isCorrected() && contrast.b().isCorrected() ? together + "."
            : together + ", or five spots of one reference piece in the session of each.";
    }

    private Optional<String> particles(GroupContrast contrast, Contrast finding) {
        int most = 0;
        String oddsRatio = "";
        String element = "";
        for (int i = 0; i < contrast.tests().size(); i++) {
            ContrastTest test = contrast.tests().get(i);
            Optional<Reason> reason = finding.elements().get(i).reason();
            if (reason.isEmpty() || reason.get() == Reason.CALIBRATION || Double.isNaN(test.theta())) {
                continue;
            }
            double shift = Math.max(Math.abs(test.theta()), Math.log(judgement.marginOddsRatio()));
            OptionalInt needed = needed(contrast, test, shift);
            if (needed.isPresent() && needed.getAsInt() > most) {
                most = needed.getAsInt();
                oddsRatio = String.format(Locale.ROOT, "%.3g", Math.exp(shift));
                element = contrast.elements().get(i).symbol();
            }
        }
        String which = contrast.common().isEmpty() ? " of each sample" : "";
        return most == 0 ? Optional.empty() : Optional.of("About " + most + " particles" + which + " would show "
            + element + " different by an odds ratio of " + oddsRatio + ".");
    }

    private OptionalInt needed(GroupContrast contrast, ContrastTest test, double shift) {
        boolean paired = !contrast.common().isEmpty();
        double kA = contrast.a().particleCount();
        double kB = contrast.b().particleCount();
        double particles = paired ? contrast.common().size() : 2 / (1 / kA + 1 / kB);
        return new Power(judgement.alpha(), WANTED_POWER).particlesFor(shift, k -> new RandomPart(
            test.s() * Math.sqrt(particles / k), paired ? k - 1 : 2 * (k - 1)), test.u(), PARTICLES_MOST);
    }

    private static String lowerFirst(String sentence) {
        return Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1);
    }
}
