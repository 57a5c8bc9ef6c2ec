/**
 * What a lab does with the service: describes samples, records and corrects spots, asks for the answer.
 *
 * <p>Use cases and the ports they need. No HTTP, no SQL, no clock of its own: who acts and when are parameters.
 */
package surfeit.lab;
