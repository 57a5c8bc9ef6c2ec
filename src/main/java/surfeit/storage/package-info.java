/**
 * Where the record is kept: one SQLite file in a data folder, every change in one transaction with its event and its
 * audit row. Implements the ports of the lab package.
 */
package surfeit.storage;
