package surfeit.report;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import surfeit.composition.Phase;
import surfeit.element.Element;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.answer.Scope;
import surfeit.spot.AccuracyClass;
import surfeit.spot.SpotCentre;

/**
 * The methods paragraph of a paper for one answer: only what was done, with the settings that were in force.
 *
 * <p>Cites by short name; {@link Reference#citedIn} finds the entries.
 */
public final class MethodsText {
    private final Interpretation interpretation;
    private final MethodSettings settings;

    private MethodsText(Interpretation interpretation) {
        this.interpretation = interpretation;
        this.settings = interpretation.settings();
    }

    /**
     * The paragraph.
     *
     * @param lines X-ray line each element was read from, by symbol, as far as it was stated
     */
    public static String of(Interpretation interpretation, Map<String, String> lines) {
        MethodsText text = new MethodsText(interpretation);
        List<String> sentences = new ArrayList<>();
        sentences.add(text.measurement());
        text.addLines(lines, sentences);
        sentences.add(text.closing());
        sentences.add(text.averaging());
        text.addScatter(sentences);
        sentences.add(text.sharedError());
        sentences.add(text.testing());
        sentences.add(text.equivalence());
        text.addSpecialCases(sentences);
        return String.join(" ", sentences);
    }

    private String measurement() {
        List<String> energies = interpretation.groups().stream()
            .flatMapToDouble(group -> group.beamEnergyKev().stream()).distinct().sorted()
            .mapToObj(Digits::setting).toList();
        boolean allStated = interpretation.groups().stream().allMatch(group -> group.beamEnergyKev().isPresent());
        String beam = energies.isEmpty() || !allStated ? "" : " at " + Listing.and(energies) + " keV";
        return "Compositions were measured by energy-dispersive X-ray spectrometry (EDS; ISO 22309) in spot mode"
            + beam + ": " + MeasuredWords.counts(interpretation) + ".";
    }

    private void addLines(Map<String, String> lines, List<String> sentences) {
        if (!lines.isEmpty()) {
            sentences.add("Lines used: " + lines.entrySet().stream().map(line -> line.getKey() + " " + line.getValue())
                .collect(Collectors.joining(", ")) + ".");
        }
        UsualLines.sentence(interpretation, lines.keySet()).ifPresent(sentences::add);
    }

    private String closing() {
        List<Element> closed = interpretation.nominalFractions().elements();
        Set<Element> excluded = new LinkedHashSet<>(interpretation.nominal().elements());
        closed.forEach(excluded::remove);
        return "Mass fractions were converted to atomic fractions with the atomic weights of 2021 (Prohaska et al. 2022), "
            + "and results normalised to 100 at% over the nominal elements "
            + Listing.and(closed.stream().map(Element::symbol).toList()) + "; all other elements"
            + (excluded.isEmpty() ? "" : " (and " + Listing.and(excluded.stream().map(Element::symbol).toList()) + ")")
            + " were left out before normalising.";
    }

    private String averaging() {
        boolean median = settings.judgement().spotCentre() == SpotCentre.MEDIAN;
        String centre = median ? "medians (of three spots or more)" : "means";
        return "Spots were averaged within each particle (" + centre + ") and particles, unweighted, within each "
            + "group, so that the particle is the unit that repeats.";
    }

    private void addScatter(List<String> sentences) {
        Set<Scope> scopes = EnumSet.noneOf(Scope.class);
        interpretation.groups().forEach(group -> scopes.add(group.scope()));
        boolean two = interpretation.groups().stream().anyMatch(GroupFinding::weakTwoParticles);
        boolean more = interpretation.groups().stream()
            .anyMatch(group -> group.scope() == Scope.PARTICLES && !group.weakTwoParticles());
        if (more) {
            sentences.add("The random uncertainty of a group is the standard error of its particle means (k - 1 "
                + "degrees of freedom).");
        }
        if (two) {
            sentences.add("With two particles it is the larger of that standard error and what the scatter or the "
                + "stated uncertainty of the spots predicts; such results are marked weak.");
        }
        if (scopes.contains(Scope.THIS_PARTICLE) || scopes.contains(Scope.THIS_SPOT)) {
            sentences.add("With one particle it is the scatter of the spots or their stated uncertainty, and the "
                + "result speaks of what was measured only.");
        }
    }

    private String sharedError() {
        AccuracyClass accuracy = settings.accuracy();
        String source = accuracy == AccuracyClass.STANDARDLESS ? Reference.NEWBURY_RITCHIE.shortName()
            : Reference.GOLDSTEIN.shortName();
        return "The calibration error shared by all spots was taken as "
            + Digits.setting(accuracy.relativeUncertainty() * 100) + " % relative standard uncertainty per element ("
            + accuracy.words() + " analysis; " + source + ") with a floor of "
            + Digits.setting(settings.floorMassFraction() * 100) + " mass %, independent between elements, propagated "
            + "through the normalisation (JCGM 100:2008); it does not shrink with the number of spots.";
    }

    private String testing() {
        return "Group means were compared with nominal on the log-odds scale (Aitchison 1986), near the ends of the "
            + "scale on the linear scale too, whichever was less favourable. Both uncertainties were combined with "
            + "effective degrees of freedom (Welch 1947; Satterthwaite 1946); the 95 % interval is never narrower "
            + "than that of the scatter alone. P values were adjusted over all elements and groups (Holm 1979) at a "
            + "family-wise level of "
            + Digits.setting(settings.judgement().alpha()) + "; the two elements of a binary count as one test.";
    }

    private String equivalence() {
        return "\"Consistent\" was stated only where two one-sided tests (Schuirmann 1987) place the mean within an "
            + "odds ratio of " + Digits.setting(settings.judgement().marginOddsRatio())
            + " of nominal; everything else is \"inconclusive\".";
    }

    private void addSpecialCases(List<String> sentences) {
        List<GroupFinding> groups = interpretation.groups();
        if (groups.stream().flatMap(group -> group.elements().stream())
            .anyMatch(finding -> finding.belowLimitCount() > 0)) {
            sentences.add("Values below a detection limit (Currie 1968) were evaluated twice, all as zero and all at "
                + "the limit, and the less favourable result was kept; a limit that was not stated was taken as "
                + Digits.setting(settings.detectionLimitMassFraction() * 100) + " mass %.");
        }
        if (groups.stream().anyMatch(group -> group.reference().map(reference -> reference.used()).orElse(false))) {
            sentences.add("Spots were corrected with reference spots of known composition from the same session; the "
                + "shared errors of sample and reference were taken to correlate with "
                + Digits.setting(settings.judgement().referenceCorrelation()) + ".");
        }
        if (!interpretation.knownPhases().isEmpty()) {
            sentences.add("Group means were compared with the known phases of the alloy ("
                + String.join(", ", interpretation.knownPhases().stream().map(Phase::name).distinct().toList())
                + ") and placed between them by the lever rule.");
        }
        if (!interpretation.depths().isEmpty()) {
            sentences.add("Readings at several beam energies were compared with each other and with a film of the pure "
                + "element on the nominal alloy (" + Reference.POUCHOU_PICHOIR.shortName() + ").");
        }
        if (!interpretation.contrasts().isEmpty()) {
            sentences.add("Groups were compared with each other particle by particle where three or more particles "
                + "carry both, otherwise as separate sets (Welch 1947), with a Holm adjustment of their own.");
        }
    }
}
