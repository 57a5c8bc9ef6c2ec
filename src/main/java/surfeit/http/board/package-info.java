/**
 * The board: pages of the service for eyes. Data in, HTML out; what goes over the wire is the business of the routes.
 */
package surfeit.http.board;
