/** A report as one HTML file with its figures inside: for a browser, for printing on A4, without script. */
package surfeit.report.html;
