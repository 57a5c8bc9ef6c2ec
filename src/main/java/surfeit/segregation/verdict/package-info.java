/**
 * What is said of a group: the verdict of every element, what it hangs on, which causes else there are, and what to do
 * next.
 */
package surfeit.segregation.verdict;
