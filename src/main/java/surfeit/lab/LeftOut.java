package surfeit.lab;

import java.util.Optional;

/** A row or column of an upload that is no measurement: a line of means, a column of remarks; and why it was left out. */
public record LeftOut(Place place, String reason, Optional<String> label) {
}
