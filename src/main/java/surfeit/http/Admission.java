package surfeit.http;

import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * A request that was let in.
 *
 * @param who        under which name it records
 * @param token      id of the token it showed; absent where none was asked for
 * @param stillHolds whether it would be let in now; for answers that go on for long
 */
record Admission(String who, Optional<String> token, BooleanSupplier stillHolds) {
}
