package surfeit.spot;

/**
 * How the workstation turned intensities into concentrations, and the shared relative error that goes with it.
 *
 * <p>The error is of the whole run, one standard uncertainty per element; it does not shrink with more spots.
 */
public enum AccuracyClass {
    /**
     * Without standards: about 95 % of results within 25 % relative, read as two standard uncertainties.
     * Source: Newbury and Ritchie, Scanning 35 (2013) 141, figure from memory.
     */
    STANDARDLESS("standardless", 0.125),
    /**
     * With standards on flat polished pieces: about 95 % within 5 % relative, read as two standard uncertainties.
     * Source: textbook figure (Goldstein et al. 2018), from memory.
     */
    STANDARDS_BASED("standards-based", 0.025);

    private final String words;
    private final double relativeUncertainty;

    AccuracyClass(String words, double relativeUncertainty) {
        this.words = words;
        this.relativeUncertainty = relativeUncertainty;
    }

    public String words() {
        return words;
    }

    /** Relative standard uncertainty of one element's sensitivity, shared by all spots of a run. */
    public double relativeUncertainty() {
        return relativeUncertainty;
    }
}
