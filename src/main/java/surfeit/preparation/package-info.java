/**
 * What a sample was touched by on its way under the beam: the lab's free words for mounts, media, residues, reagents
 * and steps, matched against a packaged vocabulary; the elements these bring, and the cautions they call for.
 */
package surfeit.preparation;
