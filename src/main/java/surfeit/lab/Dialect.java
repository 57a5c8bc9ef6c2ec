package surfeit.lab;

import java.util.Optional;

/**
 * How an upload was read, echoed so that nothing is guessed in silence.
 *
 * @param charset   character set: {@code utf-8}
 * @param delimiter what parts the columns, in a table
 * @param decimal   decimal mark, in a table that has any
 * @param timeZone  zone taken for local times, if there were any
 * @param unit      {@code at%} or {@code wt%}, where one holds for all
 * @param layout    {@code wide}, {@code long}, {@code merged} or {@code turned}, in a table
 * @param decidedBy {@code detected}, or what said so
 */
public record Dialect(String charset, Optional<String> delimiter, Optional<String> decimal, Optional<String> timeZone,
                      Optional<String> unit, Optional<String> layout, String decidedBy) {
}
