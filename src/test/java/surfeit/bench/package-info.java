/** Speed as ratios, each of two figures taken in turns in one run: {@code mvn -Pbench verify}. */
package surfeit.bench;
