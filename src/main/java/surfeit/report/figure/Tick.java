package surfeit.report.figure;

/** A value of an axis that is marked, and how it is written. */
record Tick(double value, String label) {
}
