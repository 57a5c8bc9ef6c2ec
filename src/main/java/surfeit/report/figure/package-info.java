/**
 * Figures of an answer as SVG: factors, spots, contrasts, signal against depth, power of a plan.
 *
 * <p>Drawn by the few classes here. A figure is one picture with a title and a description for screen readers, without
 * script and without anything fetched from elsewhere. It can be read in grey and in print: what matters is said by
 * shape, place and word, never by colour alone; colours follow the reader's choice of a light or a dark page.
 */
package surfeit.report.figure;
