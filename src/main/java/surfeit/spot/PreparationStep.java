package surfeit.spot;

import java.util.Optional;

/** One step of the sample's making, in the lab's own words, with the reagent or material used, if stated. */
public record PreparationStep(String step, Optional<String> reagent) {
}
