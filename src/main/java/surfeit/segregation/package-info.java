/**
 * The interpretation: compares groups of spots with the nominal composition and says where the surface is enriched or
 * depleted, by how much, how sure that is, and what else could explain it.
 *
 * <p>{@link surfeit.segregation.Interpreter} answers for one sample, {@link surfeit.segregation.SampleComparison} for two.
 * The packages below do the parts and know nothing of this one.
 */
package surfeit.segregation;
