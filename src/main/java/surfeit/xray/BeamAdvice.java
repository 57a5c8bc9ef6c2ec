package surfeit.xray;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToIntFunction;
import surfeit.element.Element;

/**
 * Which beam energy to take for an alloy and a question: a table of what each does, a recommendation and its reason.
 *
 * <p>Energies are compared first by how many of the alloy's elements lack a line, have one with a bad overlap, one
 * barely excited, one only marginally; for the bulk also by how many have only a soft one. Among the best of these:
 * <ul>
 * <li>surface film: the shallowest, and a second energy that reads at least four times as deep, so that a film fades;
 * <li>bulk: least error from film and absorption together, the share of the top 10 nm and what the absorption
 *     correction may leave of the share lost on the way out, each of the line that suffers most;
 * <li>patch: the same among energies at which at least {@value #PATCH_ALONE} of every line surely comes from the patch,
 *     lines of 1 keV and more first; where there is none, the energy at which most does.
 * </ul>
 * Elements below 1 % of the mass are in the table but do not decide. All of this is judgement, on the models of this
 * package. Immutable, thread-safe.
 *
 * @param rows           one per beam energy, lowest first
 * @param neverSeen      elements that have no usable line at any of the energies
 * @param recommendation empty where no element that decides has a line at any of the energies
 */
public record BeamAdvice(BeamQuery query, List<BeamRow> rows, List<Element> neverSeen,
                         Optional<Recommendation> recommendation) {
    /** Elements of less than this mass fraction do not decide. Judgement. */
    public static final double DECIDES_FROM = 0.01;
    /** A patch is read by itself if at least this share of every line comes from it. Judgement. */
    public static final double PATCH_ALONE = 0.85;
    private static final double DEEPER_BY = 4;

    public BeamAdvice {
        rows = List.copyOf(rows);
        neverSeen = List.copyOf(neverSeen);
    }

    /**
     * The energy to take.
     *
     * @param beamEnergyKev       the energy
     * @param secondBeamEnergyKev for a surface film, the energy to compare it with
     * @param reason              why, with its numbers and what it costs
     */
    public record Recommendation(double beamEnergyKev, OptionalDouble secondBeamEnergyKev, String reason) {
    }

    /** The advice in a sentence. */
    public String answer() {
        return BeamWords.answer(this);
    }

    /** Answers a question; profiles already known to the cache are not worked out again. */
    public static BeamAdvice of(BeamQuery query, ProfileCache profiles) {
        List<BeamRow> rows = SignalDepths.of(query.depths(), profiles).byBeamEnergy().stream().map(at -> row(query, at))
            .toList();
        List<Element> neverSeen = query.material().massFractions().keySet().stream()
            .filter(element -> query.material().massFraction(element) > 0)
            .filter(element -> rows.stream().allMatch(row -> row.line(element).isEmpty())).toList();
        List<BeamRow> deciding = rows.stream().map(row -> only(row, query.material(), neverSeen)).toList();
        return new BeamAdvice(query, rows, neverSeen, deciding.stream().allMatch(row -> row.lines().isEmpty())
            ? Optional.empty() : Optional.of(recommend(query.question(), deciding)));
    }

    private static BeamRow row(BeamQuery query, SignalDepths.AtBeamEnergy at) {
        List<SignalDepth> chosen = at.lines().stream().filter(SignalDepth::lineOfChoice).toList();
        Map<Element, Estimate> shares = new LinkedHashMap<>();
        if (query.question() instanceof BeamQuestion.Patch patch) {
            chosen.forEach(line -> shares.put(line.element(), PatchDilution.share(query.material(), line.line(),
                at.beamEnergyKev(), patch.diameterUm() / 2 * 1000, query.probeDiameterNm())));
        }
        return new BeamRow(at.beamEnergyKev(), chosen, at.withoutLine().stream().map(LineChoice::element).toList(),
            shares);
    }

    /** The row without the elements that do not decide, and without peaks of elements outside the alloy. */
    private static BeamRow only(BeamRow row, Material material, List<Element> neverSeen) {
        Map<Element, Estimate> shares = new LinkedHashMap<>(row.patchShares());
        shares.keySet().removeIf(element -> material.massFraction(element) < DECIDES_FROM);
        return new BeamRow(row.beamEnergyKev(),
            row.lines().stream().filter(line -> material.massFraction(line.element()) >= DECIDES_FROM)
                .map(line -> line.overlappedOnlyBy(material)).toList(),
            row.withoutLine().stream().filter(element -> material.massFraction(element) >= DECIDES_FROM
                && !neverSeen.contains(element)).toList(), shares);
    }

    private static Recommendation recommend(BeamQuestion question, List<BeamRow> rows) {
        boolean bulk = question instanceof BeamQuestion.Bulk;
        Comparator<BeamRow> lines = lines(bulk);
        BeamRow first = rows.stream().min(lines).orElseThrow();
        List<BeamRow> best = rows.stream().filter(row -> lines.compare(row, first) == 0).toList();
        BeamRow taken = question instanceof BeamQuestion.SurfaceFilm
            ? best.stream().min(Comparator.comparingDouble(BeamRow::deepestHalfNm)).orElseThrow()
            : bulk ? calmest(best) : forPatch(best);
        Optional<BeamRow> second = question instanceof BeamQuestion.SurfaceFilm ? deeper(best, taken)
            : Optional.empty();
        return new Recommendation(taken.beamEnergyKev(),
            second.map(row -> OptionalDouble.of(row.beamEnergyKev())).orElse(OptionalDouble.empty()),
            BeamWords.reason(question, taken, second));
    }

    private static Comparator<BeamRow> lines(boolean hardPreferred) {
        List<ToIntFunction<BeamRow>> faults = new ArrayList<>(List.of(
            row -> row.withoutLine().size(),
            row -> count(row, line -> BeamRow.isBadlyOverlapped(line) ? 1 : 0),
            row -> count(row, line -> line.excitation() == Excitation.BARELY_EXCITED ? 1 : 0),
            row -> count(row, line -> line.excitation() == Excitation.MARGINAL ? 1 : 0)));
        if (hardPreferred) {
            faults.add(row -> count(row, line -> LineChoice.soft(line.line()) ? 1 : 0));
        }
        return faults.stream().map(Comparator::comparingInt).reduce(Comparator::thenComparing).orElseThrow();
    }

    private static int count(BeamRow row, ToIntFunction<SignalDepth> fault) {
        return row.lines().stream().mapToInt(fault).sum();
    }

    private static BeamRow calmest(List<BeamRow> rows) {
        return rows.stream().min(Comparator.comparingDouble(BeamRow::largestError)).orElseThrow();
    }

    private static BeamRow forPatch(List<BeamRow> rows) {
        Optional<BeamRow> first = rows.stream().filter(BeamAdvice::readsPatchAlone).min(lines(true));
        return first.isEmpty()
            ? rows.stream().max(Comparator.comparingDouble(row -> row.smallestPatchShare().orElse(0))).orElseThrow()
            : calmest(rows.stream().filter(BeamAdvice::readsPatchAlone)
                .filter(row -> lines(true).compare(row, first.get()) == 0).toList());
    }

    private static boolean readsPatchAlone(BeamRow row) {
        return row.smallestPatchShare().orElse(0) >= PATCH_ALONE;
    }

    private static Optional<BeamRow> deeper(List<BeamRow> rows, BeamRow taken) {
        Optional<BeamRow> enough = rows.stream().filter(row -> row.deepestHalfNm() >= DEEPER_BY * taken.deepestHalfNm())
            .min(Comparator.comparingDouble(BeamRow::deepestHalfNm));
        return enough.isPresent() ? enough : rows.stream().filter(row -> row.deepestHalfNm() > taken.deepestHalfNm())
            .max(Comparator.comparingDouble(BeamRow::deepestHalfNm));
    }
}
