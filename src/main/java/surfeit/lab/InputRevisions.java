package surfeit.lab;

import java.util.OptionalLong;

/**
 * The revisions an answer was made from: with them the same answer can be made again.
 *
 * @param sample revision of the sample
 * @param alloy  revision of the alloy it names, for its nominal composition and its phases; absent where it names none
 */
public record InputRevisions(long sample, OptionalLong alloy) {
}
