package surfeit.xray;

/** What a beam energy is wanted for. */
public sealed interface BeamQuestion {

    /** To see what lies at the surface: read as shallow as the lines allow. */
    record SurfaceFilm() implements BeamQuestion {
    }

    /** To read a patch of this diameter by itself: keep the X-ray source inside it. */
    record Patch(double diameterUm) implements BeamQuestion {
        public Patch {
            if (!(diameterUm > 0 && Double.isFinite(diameterUm))) {
                throw new IllegalArgumentException("The diameter of a patch is a finite number of um above 0, got "
                    + diameterUm + ".");
            }
        }
    }

    /** To read the alloy itself: let neither a film nor absorption count for much. */
    record Bulk() implements BeamQuestion {
    }
}
