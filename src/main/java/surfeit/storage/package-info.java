/**
 * Where the record is kept: one SQLite file in a data folder, or a PostgreSQL database that several programs may use at
 * the same time. Every change is one transaction with its event and its audit row. Implements the ports of the lab
 * package; what the two engines do differently stands in {@code Engine}.
 */
package surfeit.storage;
