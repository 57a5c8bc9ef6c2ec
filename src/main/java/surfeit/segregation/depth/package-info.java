/** What lies how deep: films read from several beam energies, and how thick an enriched skin can be at most. */
package surfeit.segregation.depth;
