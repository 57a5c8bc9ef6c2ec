/**
 * The interpretation: compares groups of spots with the nominal composition and says where the surface is enriched or
 * depleted, by how much, how sure that is, and what else could explain it.
 */
package surfeit.segregation;
