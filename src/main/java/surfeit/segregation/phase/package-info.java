/** Groups read against the phases of their alloy: which one they may be, which two they mix, what diffraction says. */
package surfeit.segregation.phase;
