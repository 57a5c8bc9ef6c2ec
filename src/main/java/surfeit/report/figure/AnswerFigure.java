package surfeit.report.figure;

import java.util.Locale;

/** The figures of an answer, each with the word that asks for it. */
public enum AnswerFigure {
    /** Enrichment factors with intervals, per group and element. */
    FACTORS,
    /** Every spot, by feature and particle. */
    SPOTS,
    /** The groups against each other. */
    CONTRASTS,
    /** Signal against depth for the lines of the alloy. */
    DEPTHS;

    /** As in addresses and on the command line: {@code factors}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
