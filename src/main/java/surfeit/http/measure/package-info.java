/** What the service counts of itself, and the text in which a collector of metrics reads it. */
package surfeit.http.measure;
