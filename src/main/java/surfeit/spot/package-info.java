/** What was measured: samples and how they were made and measured, spots and the values the workstation reported. */
package surfeit.spot;
