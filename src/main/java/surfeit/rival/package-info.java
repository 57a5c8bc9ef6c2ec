/**
 * What else could have made a group's numbers: every other cause weighed by how large a shift it could fake, from beam,
 * lines, geometry, handling and bookkeeping.
 *
 * <p>Knows nothing of verdicts: it is given the shifts to be explained ({@link surfeit.rival.Shift}) and what is known
 * of the measurement ({@link surfeit.rival.Situation}), and asks of each cause how far it could move the log odds of a
 * nominal composition in the direction seen. The interpretation asks it, not the other way round.
 */
package surfeit.rival;
