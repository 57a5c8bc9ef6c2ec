package surfeit.report;

import java.util.List;
import java.util.Optional;
import surfeit.composition.Phase;
import surfeit.element.Element;
import surfeit.segregation.answer.DiffractionMismatch;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.PhaseReading;
import surfeit.segregation.answer.PhaseReading.OnTieLine;
import surfeit.segregation.answer.SpotSpread;
import surfeit.segregation.answer.Verdict;

/** What a group shows of the alloy's phases, short enough to be read aloud; the whole of it is the reading's detail. */
final class PhaseSentence {
    private PhaseSentence() {
    }

    /**
     * One or two sentences; empty where nothing is known of phases, where the spots do not tell, and for a mixture that
     * may well be the alloy itself.
     */
    static Optional<String> of(GroupFinding group) {
        boolean flagged = isFlagged(group);
        return group.phaseReading().filter(reading -> reading.kind() != PhaseReading.Kind.CANNOT_TELL)
            .filter(reading -> flagged || reading.kind() != PhaseReading.Kind.MIXTURE)
            .map(reading -> sentence(reading, flagged) + bound(reading));
    }

    private static boolean isFlagged(GroupFinding group) {
        return group.elements().stream().map(finding -> finding.outcome().verdict())
            .anyMatch(verdict -> verdict == Verdict.ENRICHED || verdict == Verdict.DEPLETED);
    }

    private static String sentence(PhaseReading reading, boolean flagged) {
        return switch (reading.kind()) {
            case ONE_PHASE -> "Fits " + reading.fitting().get(0) + " and no other known phase"
                + (flagged ? "; a spot smaller than the phases measures one phase, not the alloy." : ".");
            case MIXTURE -> reading.tieLine().map(PhaseSentence::mixture).orElseGet(() -> mixtureOfThree(reading));
            case ONE_OR_THE_OTHER -> oneOrTheOther(reading.tieLine().orElseThrow());
            case NEITHER -> neither(reading);
            case CANNOT_TELL -> "";
        };
    }

    private static String neither(PhaseReading reading) {
        return "Fits no known phase" + (reading.tieLine().isPresent() ? " and no mixture of them" : "")
            + (reading.heldByNone().isEmpty() ? "." : "; none of them holds "
            + Listing.or(reading.heldByNone().stream().map(Element::symbol).toList()) + ".");
    }

    private static String mixture(OnTieLine line) {
        return "As a mixture of " + line.from().name() + " and " + line.to().name() + " it would hold "
            + Digits.percentInterval(line.shareOfMass()) + " of " + line.to().name() + " by mass"
            + line.nominal().map(share -> "; an alloy of nominal composition would hold "
                + Digits.share(share.ofMass())).orElse("") + ".";
    }

    private static String mixtureOfThree(PhaseReading reading) {
        return "Could be a mixture of "
            + Listing.and(reading.ofThree().stream().map(share -> share.phase().name()).toList()) + ".";
    }

    private static String oneOrTheOther(OnTieLine line) {
        SpotSpread.Clusters clusters = line.spots().clusters().orElseThrow();
        return "The spots fall into two clusters, " + clusters.lowerCount() + " at " + line.from().name() + " and "
            + clusters.upperCount() + " at " + line.to().name()
            + ": the beam hit one phase or the other, and their mean "
            + "is the composition of neither.";
    }

    /** Nothing is called pure. */
    private static String bound(PhaseReading reading) {
        return reading.mainElement().map(main -> " At least " + Digits.lowerBoundPercent(main.atomicFraction())
            + " at% "
            + main.element() + ".").orElse("");
    }

    /** What the spots of a group look like, to be put after "reads like"; empty where they do not tell. */
    static Optional<String> looks(PhaseReading reading) {
        List<String> ends = reading.tieLine().map(line -> List.of(line.from().name(),
            line.to().name())).orElse(List.of());
        return switch (reading.kind()) {
            case ONE_PHASE -> Optional.of(reading.fitting().get(0));
            case MIXTURE -> Optional.of("a mixture of " + Listing.and(ends.isEmpty()
                ? reading.ofThree().stream().map(share -> share.phase().name()).toList() : ends));
            case ONE_OR_THE_OTHER -> Optional.of("one phase or the other of " + Listing.and(ends));
            case NEITHER -> Optional.of("no known phase");
            case CANNOT_TELL -> Optional.empty();
        };
    }

    /** A phase that spots and diffraction do not tell alike, with what may be the reason. */
    static String of(DiffractionMismatch mismatch) {
        String shownBy = switch (mismatch.kind()) {
            case SPOTS_ONLY -> "spots show it (" + Listing.and(mismatch.groups())
                + "), diffraction does not. Possible reasons: ";
            case DIFFRACTION_ONLY -> "diffraction shows it, no group of spots does. Possible reasons: ";
            case NOT_A_KNOWN_PHASE -> "stated as found by diffraction; ";
        };
        return mismatch.phase() + ": " + shownBy + String.join("; ", mismatch.possibleReasons()) + ".";
    }

    /** A phase that groups were compared with, and where its figures are from. */
    static String source(Phase phase) {
        return phase.name() + " of " + phase.system() + ": " + Listing.clause(phase.source()) + " (read in the source: "
            + phase.sourceRead().words() + ").";
    }
}
