/** The answer in words, tables and files: for the terminal, as Markdown and as CSV. Percent and rounding live here. */
package surfeit.report;
