package surfeit.lab;

import java.util.Optional;

/**
 * Which samples are wanted.
 *
 * @param alloy catalogue name of their alloy
 * @param text  part of their name or description, in small or capital letters
 */
public record SampleFilter(Optional<String> alloy, Optional<String> text) {
    public static final SampleFilter ALL = new SampleFilter(Optional.empty(), Optional.empty());
}
