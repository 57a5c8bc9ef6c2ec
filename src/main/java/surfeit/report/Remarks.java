package surfeit.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import surfeit.segregation.Caveat;
import surfeit.segregation.GroupFinding;
import surfeit.segregation.Interpretation;
import surfeit.segregation.Rival;

/** Caveats and rivals of an answer as single lines, in the order a reader should meet them. */
final class Remarks {
    private Remarks() {
    }

    /** {@code warning: matrix: ...}, warnings before notes, those of the whole answer before those of a group. */
    static List<String> caveats(Interpretation interpretation) {
        record Placed(Caveat caveat, String place) {
        }
        Stream<Placed> whole = interpretation.caveats().stream().map(caveat -> new Placed(caveat, ""));
        Stream<Placed> groups = interpretation.groups().stream()
            .flatMap(group -> group.caveats().stream().map(caveat -> new Placed(caveat, group.name() + ": ")));
        return Stream.concat(whole, groups)
            .sorted(Comparator.comparing((Placed placed) -> placed.caveat().weight()).reversed())
            .map(placed -> (placed.caveat().weight() == Caveat.Weight.WARNING ? "warning: " : "note: ") + placed.place()
                + Listing.sentence(placed.caveat().detail()))
            .toList();
    }

    /** Causes that could make the shift, at least in part; where none could, that so many were weighed. */
    static List<String> rivals(Interpretation interpretation, Signs signs) {
        List<String> lines = new ArrayList<>();
        for (GroupFinding group : interpretation.groups()) {
            List<Rival> able = group.rivals().stream()
                .filter(rival -> rival.couldExplain() != Rival.CouldExplain.NO).toList();
            for (Rival rival : able) {
                lines.add(group.name() + ": " + Listing.clause(rival.cause()) + ": " + rival.couldExplain().word()
                    + reach(rival, signs) + ". " + Listing.sentence(rival.howToRuleOut()));
            }
            if (able.isEmpty() && !group.rivals().isEmpty()) {
                lines.add(group.name() + ": " + Listing.count(group.rivals().size(), "other cause")
                    + " weighed, none could make these numbers.");
            }
        }
        return lines;
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
