package surfeit.xray;

/** What to keep in mind about one line's depth figures; {@code detail} is a sentence for the reader. */
public enum DepthCaveat {
    LOW_OVERVOLTAGE("The beam is less than 3 times the edge: the model puts X-rays too deep there (mean depth by"
        + " 8 to 26 %), so the bounds are wider."),
    POORLY_EXCITED("The beam is less than twice the edge: the line is weak, and small errors of the beam energy"
        + " matter."),
    SOFT_LINE("The line lies below 1 keV: absorption tables disagree by about 25 %, and surface films weigh heavily."),
    TILTED("Only the way out was tilted: the depths assume that the beam meets the surface at a right angle."),
    DENSITY_FROM_ELEMENTS("The density was worked out from the elements' volumes; depths in nm scale with it."),
    HEAVY_MATERIAL("In materials of mean atomic number 45 and more the model reads the outermost layer up to"
        + " 14 % high."),
    NO_SECONDARY_FLUORESCENCE("X-rays excited by other X-rays reach deeper and wider than the figures say.");

    private final String detail;

    DepthCaveat(String detail) {
        this.detail = detail;
    }

    public String detail() {
        return detail;
    }
}
