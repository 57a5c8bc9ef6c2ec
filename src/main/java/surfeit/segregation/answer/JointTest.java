package surfeit.segregation.answer;

import surfeit.statistics.HotellingT2;

/**
 * Whether the composition as a whole differs from nominal beyond the scatter of particles: Hotelling's T2 of the particle
 * means as isometric log-ratios.
 *
 * <p>Random error only: the calibration error that all spots share is not in it, so a small p alone shows no
 * segregation; verdicts never rest on it.
 *
 * @param test     T2 with its degrees of freedom
 * @param replaced true where values below their limit were replaced
 */
public record JointTest(HotellingT2 test, boolean replaced) {
}
