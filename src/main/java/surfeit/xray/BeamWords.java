package surfeit.xray;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Why a beam energy is recommended, in sentences with their numbers. */
final class BeamWords {
    private BeamWords() {
    }

    static String answer(BeamAdvice advice) {
        return advice.recommendation().map(taken -> "Take " + plainEnergy(taken.beamEnergyKev()) + " keV"
            + (taken.secondBeamEnergyKev().isPresent() ? " and compare it with "
                + plainEnergy(taken.secondBeamEnergyKev().getAsDouble()) + " keV" : "") + ".").orElse("No element of at least "
            + percent(BeamAdvice.DECIDES_FROM) + " % of the mass has a usable line at any of these beam energies.");
    }

    static String reason(BeamQuestion question, BeamRow taken, Optional<BeamRow> second) {
        String lines = "At " + energy(taken) + " keV: " + taken.lines().stream().map(BeamWords::excited)
            .collect(Collectors.joining(", ")) + ". ";
        String why = question instanceof BeamQuestion.SurfaceFilm ? film(taken, second)
            : question instanceof BeamQuestion.Patch patch ? patch(patch, taken) : bulk(taken);
        return lines + why + reserves(taken);
    }

    private static String excited(SignalDepth line) {
        return String.format(Locale.ROOT, "%s at %.1f times its edge", line.line().label(), line.overvoltage());
    }

    private static String film(BeamRow taken, Optional<BeamRow> second) {
        String first = "No energy with lines as well excited reads shallower: half of the signal comes from the top "
            + plain(taken.deepestHalfNm()) + " nm, and a film of 10 nm makes up " + percent(taken.largestFilmShare())
            + " % of it.";
        return first + second.map(deep -> " Measure again at " + energy(deep) + " keV, where half comes from the top "
            + plain(deep.deepestHalfNm()) + " nm: what lies at the surface fades there, what lies deep stays.")
            .orElse("");
    }

    private static String patch(BeamQuestion.Patch patch, BeamRow taken) {
        double share = taken.smallestPatchShare().orElse(0);
        double width = taken.lines().stream().mapToDouble(SignalDepth::lateralDiameterNm).max().orElse(0);
        String source = "The X-ray source is about " + plain(width) + " nm wide (Reed); at least " + percent(share)
            + " % of every line comes from a patch of " + plain(patch.diameterUm())
            + " \u00b5m, if it is deeper than the signal.";
        return source + (share >= BeamAdvice.PATCH_ALONE
            ? " Among the energies that read the patch by itself film and absorption err least here."
            : " No energy with lines as well excited is sure to read the patch by itself; at this one most surely "
                + "comes from it.");
    }

    private static String bulk(BeamRow taken) {
        return "A film of 10 nm makes up " + percent(taken.largestFilmShare()) + " % of the signal; "
            + percent(taken.largestAbsorbedShare())
            + " % of the most absorbed line is lost on the way out, and correcting for that may err by "
            + percent(taken.largestAbsorptionError())
            + " %. At lower energies films err more, at higher ones absorption.";
    }

    private static String reserves(BeamRow taken) {
        StringBuilder words = new StringBuilder();
        if (!taken.withoutLine().isEmpty()) {
            words.append(" No line can be used for ").append(join(taken.withoutLine())).append('.');
        }
        List<String> weak = taken.lines().stream().filter(line -> line.overvoltage() < Excitation.PREFERRED_OVERVOLTAGE)
            .map(line -> line.line().label()).toList();
        if (!weak.isEmpty()) {
            words.append(" Weakly excited: ").append(join(weak)).append("; count longer.");
        }
        List<String> soft = taken.lines().stream().filter(line -> LineChoice.soft(line.line()))
            .map(line -> line.line().label()).toList();
        if (!soft.isEmpty()) {
            words.append(" Below 1 keV, where films weigh heavily and absorption is known to 25 %: ").append(join(soft))
                .append('.');
        }
        taken.badOverlap().ifPresent(overlap -> words.append(" ").append(overlap.line().label())
            .append(" is overlapped by ").append(overlap.with()).append("; fit both peaks and count long."));
        return words.toString();
    }

    private static String join(List<?> names) {
        return names.stream().map(Object::toString).collect(Collectors.joining(", "));
    }

    private static String energy(BeamRow row) {
        return plainEnergy(row.beamEnergyKev());
    }

    private static String plainEnergy(double kev) {
        return new BigDecimal(Double.toString(kev)).stripTrailingZeros().toPlainString();
    }

    private static String percent(double share) {
        return plain(share * 100);
    }

    /** Two digits, without an exponent. */
    private static String plain(double value) {
        return value == 0 ? "0" : new BigDecimal(value).round(new MathContext(2)).toPlainString();
    }
}
