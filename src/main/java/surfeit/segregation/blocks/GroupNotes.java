package surfeit.segregation.blocks;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.sums.GroupKey;
import surfeit.segregation.sums.GroupTally;
import surfeit.segregation.sums.SumsBytes;
import surfeit.segregation.sums.SumsIn;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/**
 * A short note beside kept sums: which elements of the nominal each group lists, and whether it has negative values. A
 * spot that shows otherwise has its group read again, and the sums of the group are of no use to an answer any more.
 */
public final class GroupNotes {
    /** Groups up to which a note is made: every spot that comes is held against it. Judgement. */
    private static final int GROUPS_MAX = 64;

    private GroupNotes() {
    }

    static byte[] of(NominalFractions nominal, Map<GroupKey, GroupTally.Closing> groups) {
        SumsBytes out = new SumsBytes();
        Map<GroupKey, GroupTally.Closing> noted = groups.size() <= GROUPS_MAX ? groups : Map.of();
        out.elements(nominal.elements());
        out.count("groups", noted.size());
        noted.forEach((key, closing) -> {
            out.text("group", key.name());
            out.optionalReal("beam energy", key.beamEnergyKev());
            out.optionalText("session", key.session());
            out.elements(closing.listed());
            out.yesOrNo("negative values", closing.negatives());
        });
        return out.toBytes();
    }

    /** What the spots of each group were closed by; none where other elements are compared with now. */
    static Map<GroupKey, GroupTally.Closing> closings(byte[] notes, NominalFractions nominal) {
        Map<GroupKey, GroupTally.Closing> closings = new LinkedHashMap<>();
        try {
            SumsIn in = new SumsIn(notes);
            in.requireElements(nominal.elements());
            for (long left = in.count(); left > 0; left--) {
                closings.put(new GroupKey(in.text(), in.optionalReal(), in.optionalText()),
                    new GroupTally.Closing(new TreeSet<>(in.elements()), in.yesOrNo()));
            }
            return closings;
        } catch (SumsIn.UnfitException e) {
            return Map.of();
        }
    }

    /** Whether any of these spots shows its group otherwise than noted; false for groups that are not noted. */
    public static boolean areDisturbed(byte[] notes, Sample sample, GroupBy by, List<Spot> spots) {
        try {
            SumsIn in = new SumsIn(notes);
            Set<Element> nominal = Set.copyOf(in.elements());
            for (long left = in.count(); left > 0; left--) {
                GroupKey key = new GroupKey(in.text(), in.optionalReal(), in.optionalText());
                Set<Element> listed = new HashSet<>(in.elements());
                boolean negatives = in.yesOrNo();
                for (Spot spot : spots) {
                    if (!spot.isReference() && GroupKey.of(spot, sample, by).equals(key)
                        && isDisturbed(nominal, listed, negatives, spot)) {
                        return true;
                    }
                }
            }
            return false;
        } catch (SumsIn.UnfitException e) {
            return true;
        }
    }

    private static boolean isDisturbed(Set<Element> nominal, Set<Element> listed, boolean negatives, Spot spot) {
        return spot.values().entrySet().stream().filter(entry -> nominal.contains(entry.getKey())).anyMatch(entry ->
            !(entry.getValue() instanceof ReportedValue.NotReported) && !listed.contains(entry.getKey())
                || !negatives && entry.getValue() instanceof ReportedValue.Measured measured && measured.fraction() < 0);
    }
}
