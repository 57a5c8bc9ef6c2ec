/**
 * Uploads in, spots and faults out: tables as workstations and spreadsheets write them, and the printed values in them.
 *
 * <p>One dialect a file, decided once; nothing is guessed, every fault says where, what was expected and what came.
 * Pure: no network, no database, no clock. {@link surfeit.intake.SpotTable} reads a table;
 * {@link surfeit.intake.SpotIntake}, {@link surfeit.intake.SpotDraft} and
 * {@link surfeit.intake.ReportedValueReader} serve spots that come in another form as well.
 */
package surfeit.intake;
