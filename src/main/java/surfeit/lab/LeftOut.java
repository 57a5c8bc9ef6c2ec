package surfeit.lab;

import java.util.Optional;

/** A row or column that is no measurement, such as a line of means or a column of remarks, and why it was left out. */
public record LeftOut(Place place, String reason, Optional<String> label) {
}
