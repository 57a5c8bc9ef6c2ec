/**
 * The event feed: one reader of the log, and everybody who listens. Knows JSON and Jetty's way to answer, no routes.
 */
package surfeit.http.feed;
