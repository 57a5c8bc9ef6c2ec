package surfeit.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import surfeit.rival.Rival;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;

/** Caveats and rivals of an answer as single lines, in the order a reader should meet them. */
final class Remarks {
    private Remarks() {
    }

    /** {@code warning: matrix: ...}, warnings before notes; what holds of several groups is said once. */
    static List<String> caveats(Interpretation interpretation) {
        Map<Caveat, List<String>> places = new LinkedHashMap<>();
        interpretation.caveats().forEach(caveat -> places.put(caveat, List.of()));
        for (GroupFinding group : interpretation.groups()) {
            for (Caveat caveat : group.caveats()) {
                places.merge(caveat, List.of(group.name()), Remarks::joined);
            }
        }
        return places.entrySet().stream()
            .sorted(Comparator.comparing((Map.Entry<Caveat, List<String>> entry) -> entry.getKey().weight()).reversed())
            .map(entry -> line(entry.getKey(), entry.getValue())).toList();
    }

    private static List<String> joined(List<String> before, List<String> more) {
        return Stream.concat(before.stream(), more.stream()).toList();
    }

    private static String line(Caveat caveat, List<String> groups) {
        return (caveat.weight() == Caveat.Weight.WARNING ? "warning: " : "note: ")
            + (groups.isEmpty() ? "" : Listing.and(groups) + ": ") + Listing.sentence(caveat.detail());
    }

    /** Causes that could make the shift, at least in part; where none could, that so many were weighed. */
    static List<String> rivals(Interpretation interpretation, Signs signs) {
        List<String> lines = new ArrayList<>();
        for (GroupFinding group : interpretation.groups()) {
            List<Rival> able = group.rivals().stream()
                .filter(rival -> rival.couldExplain() != Rival.CouldExplain.NO).toList();
            for (Rival rival : able) {
                lines.add(group.name() + ": " + Listing.clause(rival.cause()) + ": " + rival.couldExplain().word()
                    + reach(rival, signs) + ". " + wayOut(rival));
            }
            if (able.isEmpty() && !group.rivals().isEmpty()) {
                lines.add(group.name() + ": " + Listing.count(group.rivals().size(), "other cause")
                    + " weighed, none could make these numbers.");
            }
        }
        return lines;
    }

    /** What to measure or check, and which fields would settle it. */
    static String wayOut(Rival rival) {
        return Listing.sentence(rival.howToRuleOut())
            + (rival.needs().isEmpty() ? "" : " To be stated: " + Listing.and(rival.needs()) + ".");
    }

    private static String reach(Rival rival, Signs signs) {
        String factor = factor(rival, signs);
        return factor.isEmpty() ? "" : ", " + factor;
    }

    /** {@code up to x1.3} or {@code down to x0.7}; empty where no factor was estimated. */
    static String factor(Rival rival, Signs signs) {
        return rival.largestFactor().stream()
            .mapToObj(factor -> (factor < 1 ? "down to " : "up to ") + signs.times() + Digits.plain(factor))
            .findFirst().orElse("");
    }
}
