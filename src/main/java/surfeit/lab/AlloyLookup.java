package surfeit.lab;

import java.util.List;
import java.util.Optional;

/** The alloys that come with the program. */
public interface AlloyLookup {

    Optional<Alloy> find(String id);

    /** All of them, by id. */
    List<Alloy> all();
}
