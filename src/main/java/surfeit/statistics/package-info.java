/**
 * Numbers in, numbers out: t and normal probabilities, how random and shared errors join, tests of many elements,
 * spots nested in particles, counting limits, and how many particles a study needs. Knows no chemistry.
 */
package surfeit.statistics;
