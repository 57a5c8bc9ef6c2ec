/**
 * What is added up of the spots of a group: closed parts, particles, foreign elements, places between phases, facts
 * beside; each sum with its writing and reading back.
 */
package surfeit.segregation.sums;
