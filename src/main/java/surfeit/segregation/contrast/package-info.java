/** Groups against each other: those of one answer, and those of two samples matched by feature and conditions. */
package surfeit.segregation.contrast;
