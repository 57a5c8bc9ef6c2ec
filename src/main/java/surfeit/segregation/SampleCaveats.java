package surfeit.segregation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import surfeit.composition.Nominal;
import surfeit.element.Spelling;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.Figures;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.nominal.GroupAnalysis;

/** What a reader must know about the whole answer. */
final class SampleCaveats {
    private SampleCaveats() {
    }

    /** A text of the lab's that the vocabulary does not know: kept, shown, and nothing concluded from it. */
    static Caveat unknownWords(String text) {
        return Caveat.note("word-not-known", "Not in the vocabulary: " + Spelling.quoted(text)
            + "; it is kept as it is, and neither "
            + "an element it may bring nor a caution was taken from it.");
    }

    static List<Caveat> of(Nominal nominal, List<GroupAnalysis> analyses, int sessions, MethodSettings settings) {
        List<Caveat> caveats = new ArrayList<>();
        if (nominal.isClosed()) {
            caveats.add(Caveat.note("nominal-closed", String.format(Locale.ROOT,
                "The nominal as stated adds up to %.4g %%; it was closed to 100 %%.", nominal.statedSum() * 100)));
        }
        if (analyses.stream().anyMatch(analysis -> !analysis.referenceUsed())) {
            caveats.add(Caveat.note("shared-calibration-error", "The " + settings.accuracy().words() + " calibration error ("
                + Figures.of(settings.accuracy().relativeUncertainty() * 100, 3) + " % relative, one standard uncertainty per "
                + "element) is shared by all spots and is in every interval; more spots do not shrink it."));
        }
        if (sessions == 1) {
            caveats.add(Caveat.note("single-session", "All spots are of one session; what went wrong in it went wrong for all."));
        }
        return caveats;
    }
}
