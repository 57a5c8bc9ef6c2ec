/**
 * How sure a group's mean is: the scatter of its particles and spots, the calibration error that all its spots share, and
 * what reference spots make of it.
 */
package surfeit.segregation.uncertainty;
