/** How samples, spots and answers look as JSON: strict reading with every fault at its place, deterministic writing. */
package surfeit.http.json;
