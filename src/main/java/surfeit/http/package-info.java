/**
 * The service over HTTP: addresses, forms, revisions as ETags, refusals, and the documents that describe them.
 *
 * <p>{@link surfeit.http.Server} starts it; {@link surfeit.http.RouteTable} lists every address.
 */
package surfeit.http;
