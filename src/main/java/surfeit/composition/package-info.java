/**
 * Element fractions of a spot or an alloy: their basis, their closing to one, nominal compositions and alloys.
 * Fractions lie in 0..1; percent exists only at the program's edge.
 */
package surfeit.composition;
