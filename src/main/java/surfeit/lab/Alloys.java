package surfeit.lab;

import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import surfeit.composition.Alloy;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Nominal;
import surfeit.composition.Phase;
import surfeit.element.Spelling;

/** The alloys a lab can name: its own statements first, then those of the program. Thread-safe. */
final class Alloys {
    private final AlloyCatalogue packaged;

    Alloys(AlloyCatalogue packaged) {
        this.packaged = packaged;
    }

    Optional<StoredAlloy> find(ReadAccess access, String id) {
        return access.alloy(id).or(() -> ofProgram(id));
    }

    Optional<StoredAlloy> find(ReadAccess access, String id, long revision) {
        return revision == 0 ? ofProgram(id) : access.alloy(id, revision);
    }

    StoredAlloy require(ReadAccess access, String id) {
        return find(access, id).orElseThrow(() -> new ProblemException(Problem.ALLOY_UNKNOWN, unknown(access, id)));
    }

    private String unknown(ReadAccess access, String id) {
        List<Alloy> own = access.alloys().stream().map(StoredAlloy::alloy).toList();
        List<String> nearest = packaged.with(own).nearest(id);
        return "The catalogue has no alloy " + Spelling.quoted(id)
            + (nearest.isEmpty() ? "." : "; nearest known: " + String.join(", ", nearest) + ".");
    }

    /** The handbook phases of the systems inside a nominal that belongs to no alloy. */
    List<Phase> handbookPhases(Nominal nominal) {
        return packaged.phasesOf(nominal);
    }

    List<StoredAlloy> all(ReadAccess access) {
        TreeMap<String, StoredAlloy> byId = new TreeMap<>();
        packaged.all().forEach(alloy -> byId.put(alloy.id(), new StoredAlloy(alloy, 0, Optional.empty())));
        access.alloys().forEach(alloy -> byId.put(alloy.alloy().id(), alloy));
        return List.copyOf(byId.values());
    }

    Change<StoredAlloy> define(WriteAccess access, Alloy alloy, Expectation expectation, Occasion occasion) {
        Optional<StoredAlloy> present = find(access, alloy.id());
        if (present.isPresent() && present.get().alloy().saysTheSameAs(alloy)) {
            return new Change<>(Change.Kind.UNCHANGED, present.get());
        }
        if (present.isPresent()) {
            expectation.requireForChange("Alloy " + alloy.id(), present.get().revision());
        } else {
            expectation.requireIfStated("Alloy " + alloy.id(), Optional.empty());
        }
        StoredAlloy now = access.defineAlloy(alloy, occasion);
        access.append(Events.of(LabEvent.Type.ALLOY_CHANGED, occasion, Optional.empty(), alloy.id()));
        access.audit(occasion, InputChange.ALLOY_STATED, Optional.empty(), alloy.id() + " revision " + now.revision());
        Staleness.alloyChanged(access, alloy.id(), InputChange.ofAlloy(alloy.id(), now.revision(), occasion));
        return new Change<>(present.isPresent() ? Change.Kind.CHANGED : Change.Kind.CREATED, now);
    }

    private Optional<StoredAlloy> ofProgram(String id) {
        return packaged.byId(id).map(alloy -> new StoredAlloy(alloy, 0, Optional.empty()));
    }
}
