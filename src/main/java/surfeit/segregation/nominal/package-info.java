/**
 * One group of spots against the nominal composition: the test of a mean, with limits, margin and reference spots.
 */
package surfeit.segregation.nominal;
