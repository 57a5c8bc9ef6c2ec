/**
 * The answer in words, tables and files: for the terminal, as CSV, and as a report free of markup that Markdown and
 * HTML share. Percent and rounding live here.
 */
package surfeit.report;
