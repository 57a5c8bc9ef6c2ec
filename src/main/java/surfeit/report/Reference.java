package surfeit.report;

import java.util.Comparator;
import java.util.List;

/** The published sources of the method, in one place. Those not read for this program say that they are from memory. */
public enum Reference {
    GUM("JCGM 100:2008", "JCGM 100:2008, Evaluation of measurement data - Guide to the expression of uncertainty in "
        + "measurement (from memory; section 7.2.6 read in a quotation)."),
    WELCH("Welch 1947", "B. L. Welch, The generalization of Student's problem when several different population "
        + "variances are involved, Biometrika 34 (1947) 28-35 (from memory)."),
    SATTERTHWAITE("Satterthwaite 1946", "F. E. Satterthwaite, An approximate distribution of estimates of variance "
        + "components, Biometrics Bulletin 2 (1946) 110-114 (from memory)."),
    HOLM("Holm 1979", "S. Holm, A simple sequentially rejective multiple test procedure, Scandinavian Journal of "
        + "Statistics 6 (1979) 65-70 (from memory)."),
    SCHUIRMANN("Schuirmann 1987", "D. J. Schuirmann, A comparison of the two one-sided tests procedure and the power "
        + "approach for assessing the equivalence of average bioavailability, Journal of Pharmacokinetics and "
        + "Biopharmaceutics 15 (1987) 657-680 (from memory)."),
    CURRIE("Currie 1968", "L. A. Currie, Limits for qualitative detection and quantitative determination, Analytical "
        + "Chemistry 40 (1968) 586-593 (from memory)."),
    AITCHISON("Aitchison 1986", "J. Aitchison, The Statistical Analysis of Compositional Data, Chapman and Hall 1986 "
        + "(from memory)."),
    POUCHOU_PICHOIR("Pouchou and Pichoir 1991", "J. L. Pouchou and F. Pichoir, chapter on quantitative analysis of "
        + "homogeneous and stratified volumes, in K. F. J. Heinrich and D. E. Newbury (eds), Electron Probe "
        + "Quantitation, Plenum 1991, 31-75 (from memory, as are the coefficients used)."),
    ISO_22309("ISO 22309", "ISO 22309, Microbeam analysis - Quantitative analysis using energy-dispersive "
        + "spectrometry (EDS) (abstract read)."),
    PROHASKA("Prohaska et al. 2022", "T. Prohaska et al., Standard atomic weights of the elements 2021 (IUPAC Technical "
        + "Report), Pure and Applied Chemistry 94 (2022) 573-600 (Table 1 read in a transcription)."),
    NEWBURY_RITCHIE("Newbury and Ritchie 2013", "D. E. Newbury and N. W. M. Ritchie, Is scanning electron "
        + "microscopy/energy dispersive X-ray spectrometry (SEM/EDS) quantitative?, Scanning 35 (2013) 141-168 "
        + "(from memory)."),
    GOLDSTEIN("Goldstein et al. 2018", "J. I. Goldstein et al., Scanning Electron Microscopy and X-Ray Microanalysis, "
        + "4th ed., Springer 2018 (from memory).");

    private final String shortName;
    private final String text;

    Reference(String shortName, String text) {
        this.shortName = shortName;
        this.text = text;
    }

    /** As cited in running text: {@code Holm 1979}. */
    public String shortName() {
        return shortName;
    }

    /** The whole entry. */
    public String text() {
        return text;
    }

    /** The entries that a text cites, in alphabetical order. */
    public static List<Reference> citedIn(String text) {
        return List.of(values()).stream().filter(reference -> text.contains(reference.shortName))
            .sorted(Comparator.comparing(reference -> reference.text.replaceFirst("^([A-Z]\\. )+", ""))).toList();
    }
}
