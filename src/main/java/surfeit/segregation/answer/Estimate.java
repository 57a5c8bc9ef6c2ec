package surfeit.segregation.answer;

/** A value with the ends of its 95 % interval; an end may be infinite where the data set no bound. */
public record Estimate(double value, double low, double high) {
}
