package surfeit.xray;

import java.util.OptionalDouble;

/**
 * A round patch of another material in the surface, with the beam at its centre.
 *
 * <p>{@code thicknessNm} where it is a flake on the surface; without it the patch is deeper than the signal. Lengths in
 * nm. Immutable, thread-safe.
 */
public record Patch(Material material, double diameterNm, OptionalDouble thicknessNm) {
    private static final double MOST_NM = 1e6;

    public Patch {
        if (!(diameterNm > 0 && diameterNm <= MOST_NM)) {
            throw new IllegalArgumentException("Patch diameter is " + diameterNm + " nm, must lie above 0 and up to "
                + MOST_NM + " nm.");
        }
        if (!(thicknessNm.orElse(MOST_NM) > 0 && thicknessNm.orElse(MOST_NM) <= MOST_NM)) {
            throw new IllegalArgumentException("Patch thickness is " + thicknessNm.getAsDouble()
                + " nm, must lie above 0 and up to " + MOST_NM + " nm.");
        }
    }
}
