package surfeit.lab;

import java.util.OptionalLong;

/**
 * The revisions an answer was made from: with them the same answer can be made again.
 *
 * @param sample revision of the sample
 * @param alloy  revision of its alloy; absent where the sample states its own nominal composition
 */
public record InputRevisions(long sample, OptionalLong alloy) {
}
