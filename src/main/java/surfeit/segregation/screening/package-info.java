/** Single spots against nominal, each with the scatter of its group: the ones worth a second look. */
package surfeit.segregation.screening;
