package surfeit.rival;

/** The causes that are weighed, by codes that stay the same in every answer. */
public enum Cause {
    /** A peak of another element falls on the measured line. */
    LINE_OVERLAP("line-overlap"),
    /** The beam does not excite the line, or barely. */
    LINE_EXCITATION("line-excitation"),
    /** The local surface was tilted, so that one line was absorbed more than the other. */
    TILT("tilt"),
    /** The particle is thinner than the depth X-rays come from. */
    THIN_PARTICLE("thin-particle"),
    /** Oil, oxide, salt or an etch product lies on the surface. */
    RESIDUE("residue"),
    /** A polishing medium was left on or in the surface. */
    POLISHING_MEDIUM("polishing-medium"),
    /** The conductive coating holds an element of the alloy, collides with a line or absorbs it. */
    COATING("coating"),
    /** The feature is smaller than the volume the X-rays come from. */
    SMALL_PATCH("small-patch"),
    /** Mass percent were taken for atomic percent, or the reverse. */
    SWAPPED_UNITS("swapped-units"),
    /** An element was left out before normalising, so that the correction was made for another material. */
    LEFT_OUT_ELEMENT("left-out-element"),
    /** The raw total is low, high, or was forced to 100 everywhere. */
    RAW_TOTAL("raw-total"),
    /** Signal of the stub, grid or holder. */
    MOUNT("mount"),
    /** Signal of the detector itself. */
    DETECTOR("detector"),
    /** The beam energy is not stated, so that energies may be mixed. */
    BEAM_ENERGY("beam-energy"),
    /** The feature was only seen in one position towards the detector. */
    FEATURE_WITH_POSITION("feature-with-position"),
    /** The feature was only measured in a session of its own. */
    FEATURE_WITH_SESSION("feature-with-session"),
    /** One particle carries the shift. */
    ONE_PARTICLE("one-particle"),
    /** Fewer than three particles were measured. */
    FEW_PARTICLES("few-particles"),
    /** The detection limit lies above nominal, or may do so. */
    DETECTION_LIMIT("detection-limit");

    private final String code;

    Cause(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }
}
