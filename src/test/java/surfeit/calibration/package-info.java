/** Measures the program's promises on invented samples: how often its intervals, flags and "consistent" are right. */
package surfeit.calibration;
