/**
 * What is said of a sample: verdicts, factors with their intervals, contrasts, readings of phases and depths, caveats.
 *
 * <p>Values only: nothing is worked out here, and all other packages of the interpretation may say their part with them.
 */
package surfeit.segregation.answer;
