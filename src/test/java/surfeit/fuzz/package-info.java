/** Hostile input by the thousand: where it comes from, how it is altered, and what counts as a failure. */
package surfeit.fuzz;
