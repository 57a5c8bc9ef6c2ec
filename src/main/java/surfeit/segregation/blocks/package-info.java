/**
 * How the spots of a sample are read: in blocks, each spot once, into the sums of every group; kept sums go on from where
 * they stopped.
 */
package surfeit.segregation.blocks;
