package surfeit.rival;

import java.util.List;
import java.util.Optional;
import surfeit.element.Element;

/** How one cause is put into words, and how much may be said of it. Filled in step by step; not thread-safe. */
final class Draft {
    final String words;
    final String assumes;
    List<String> needs = List.of();
    Rival.CouldExplain most = Rival.CouldExplain.YES;
    boolean keptAnyway;
    boolean fromPhysics;
    boolean ofGroup;
    boolean evident;
    Optional<Element> element = Optional.empty();

    /**
     * @param words   what else it could be
     * @param assumes what the estimate takes for granted
     */
    Draft(String words, String assumes) {
        this.words = words;
        this.assumes = assumes;
    }

    /** Its reach follows from the beam energy: where that is not stated, "in part" is the most that is said. */
    Draft fromPhysics() {
        fromPhysics = true;
        return this;
    }

    /** It concerns the group, not one element. */
    Draft ofGroup() {
        ofGroup = true;
        return this;
    }

    Draft of(Element one) {
        element = Optional.of(one);
        return this;
    }

    /** Nothing in the data or the description shows that it was there, so "in part" is the most that is said. */
    Draft atMostInPart() {
        most = Rival.CouldExplain.IN_PART;
        return this;
    }

    /** The lab states it, or the spots show it: it is named before what is only possible. */
    Draft evident(boolean holds) {
        evident = holds;
        return this;
    }

    Draft needing(String... fields) {
        needs = List.of(fields);
        return this;
    }

    /** Worth saying of the leading shift even where it explains nothing: the lab described what it was weighed by. */
    Draft keptAnyway() {
        keptAnyway = true;
        return this;
    }
}
