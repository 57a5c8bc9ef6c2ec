package surfeit.rival;

/** Where the estimates come from, in words for the reader. */
final class Sources {
    static final String ABSORPTION = "Depth model of Pouchou and Pichoir 1991 (coefficients from memory); absorption "
        + "from the tables of Elam, Ravel and Sieber 2002";
    static final String LINES = "Lines: X-Ray Data Booklet (Bearden 1967) and Elam, Ravel and Sieber 2002; strengths "
        + "without absorption, good to a factor of about three";
    static final String STOICHIOMETRY = "Stoichiometry with standard atomic weights (IUPAC/CIAAW 2021)";
    static final String EXCITATION = "Overvoltage of the line's own edge; intensity as (U - 1)^1.5, from memory";
    static final String PATCH = "Width of the X-ray source after Reed (from memory); share of a round patch fitted to "
        + "a Monte Carlo simulation made for this program";
    static final String JUDGEMENT = "Judgement";
    static final String PRACTICE = "Common practice, no source";
    static final String ARITHMETIC = "Arithmetic on the spots given";

    private Sources() {
    }
}
