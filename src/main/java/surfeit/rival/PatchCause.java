package surfeit.rival;

import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.composition.Basis;
import surfeit.composition.Closure;
import surfeit.xray.Estimate;
import surfeit.xray.LateralSpread;
import surfeit.xray.Line;
import surfeit.xray.PatchDilution;

/**
 * A feature smaller than the volume the X-rays come from: the spot reports a mixture of it and of what lies around it.
 *
 * <p>Two things follow. The shift may be that of the surroundings: how far it can go is weighed with surroundings made
 * of the element alone (or free of it); only another measured group that is shifted so far lets it explain the shift
 * alone. And the patch's own composition lies between bounds, which are told and never put in place of what was
 * measured. A flake thinner than the depth of the signal is diluted by depth too.
 */
final class PatchCause {
    private static final double NM_PER_UM = 1000;
    /** Nine tenths of the signal come from within this share of Reed's diameter (radius), at most. */
    private static final double NINE_TENTHS_RADIUS = 0.95;
    /**
     * From this radius on, in Reed's diameters, no electron gets out of the patch: electron range over Reed's diameter
     * is 1.6 to 2.6 for well excited lines in Al to Au at 10 to 20 keV, by the formulas used here.
     */
    private static final double BEYOND_ELECTRONS = 3;
    private static final Question QUESTION = question("larger features of the kind");
    private static final String WORDS = "patch smaller than the interaction volume";

    private PatchCause() {
    }

    private static Question question(String what) {
        return new Question(Cause.SMALL_PATCH, "Measure " + what + ", lower the beam energy, or measure a lamella in "
            + "transmission.", Sources.PATCH);
    }

    static void weigh(Inquiry inquiry, Shift shift) {
        Optional<GroupPhysics> known = inquiry.atStatedEnergy();
        Situation situation = inquiry.situation();
        OptionalDouble size = inquiry.evidence().featureUm();
        if (size.isEmpty()) {
            unknownSize(inquiry, shift);
            return;
        }
        double[] mass = inquiry.meanMass();
        OptionalDouble density = AlloyMaterial.density(situation.elements(), mass);
        if (known.isEmpty() || density.isEmpty() || known.get().signal(shift.index()).isEmpty()) {
            unknownWidth(inquiry, shift);
            return;
        }
        GroupPhysics physics = known.get();
        Line line = physics.signal(shift.index()).get().line();
        double diameter = LateralSpread.reedDiameterNm(density.getAsDouble(), line.edgeEnergyKev(),
            physics.beamEnergyKev());
        double radius = size.getAsDouble() * NM_PER_UM / 2;
        Estimate share = radius >= BEYOND_ELECTRONS * diameter ? new Estimate(1, 1, 1)
            : PatchDilution.share(diameter, line.overvoltage(physics.beamEnergyKev()), radius);
        double possible = mixtureReach(physics, shift, share.low(), pure(shift, mass.length));
        double measured = 0;
        Optional<Situation.Other> around = Optional.empty();
        for (Situation.Other other : situation.others()) {
            double own = mixtureReach(physics, shift, share.low(),
                AlloyMaterial.massFractions(situation.elements(), AlloyMaterial.positive(other.mean())));
            if (other.beamEnergyKev().equals(situation.beamEnergyKev()) && own > measured) {
                measured = own;
                around = Optional.of(other);
            }
        }
        if (!inquiry.worthTelling(shift, Math.max(possible, measured))) {
            return;
        }
        boolean alone = shift.couldExplain(measured) == Rival.CouldExplain.YES;
        Draft draft = new Draft(WORDS, assumes(inquiry, shift, mass, share, size.getAsDouble()) + (alone
            ? " The surroundings as in " + around.orElseThrow().group() + " would suffice." : ""))
            .keptAnyway().evident(Inquiry.worthwhile(shift, possible));
        inquiry.weigh(QUESTION, shift, alone ? measured : possible, alone ? draft : draft.atMostInPart());
    }

    private static void unknownWidth(Inquiry inquiry, Shift shift) {
        if (inquiry.isLeading(shift)) {
            Draft draft = new Draft(WORDS,
                "Without the beam energy (or a density of the alloy) the width of the signal is not known.");
            inquiry.name(QUESTION, Rival.CouldExplain.IN_PART,
                draft.of(shift.element()).needing("beam_energy_kev"));
        }
    }

    /** Without a size: from which size on the lab need not worry. */
    private static void unknownSize(Inquiry inquiry, Shift shift) {
        if (!inquiry.situation().labelled() || !inquiry.isLeading(shift)) {
            return;
        }
        Optional<GroupPhysics> wide = inquiry.atStatedEnergy()
            .filter(p -> p.density().isPresent() && p.signal(shift.index()).isPresent());
        Optional<String> across = wide.map(p -> Words.number(2 * NINE_TENTHS_RADIUS / NM_PER_UM
            * LateralSpread.reedDiameterNm(p.density().getAsDouble(), p.line(shift.index()).orElseThrow().edgeEnergyKev(),
                p.beamEnergyKev())) + " \u00b5m");
        String limit = across.map(width -> "Nine tenths of " + wide.orElseThrow().line(shift.index()).orElseThrow()
            + " come from within " + width + " across in this alloy: a smaller feature is diluted.")
            .orElse("The size of the feature is not stated.");
        inquiry.name(across.map(width -> question("features of the kind clearly wider than " + width)).orElse(QUESTION),
            Rival.CouldExplain.IN_PART, new Draft(WORDS, limit).of(shift.element()).needing("feature_size_um"));
    }

    private static double[] pure(Shift shift, int n) {
        double[] around = new double[n];
        if (shift.up()) {
            around[shift.index()] = 1;
        }
        return around;
    }

    /** Reach of a patch of nominal composition of which only a share is seen; surroundings without mass are nothing. */
    private static double mixtureReach(GroupPhysics physics, Shift shift, double share, double[] around) {
        double[] seen = physics.massFractions();
        double free = 0;
        for (double part : around) {
            free += part;
        }
        double[] amounts = new double[seen.length];
        if (free == 0) {
            double rest = 1 - seen[shift.index()];
            for (int j = 0; j < seen.length; j++) {
                amounts[j] = j == shift.index() ? 0 : seen[j] / rest;
            }
        } else {
            System.arraycopy(around, 0, amounts, 0, amounts.length);
        }
        double own = Math.max(share, 1e-3);
        for (int j = 0; j < amounts.length; j++) {
            amounts[j] *= (1 - own) / own;
        }
        return shift.direction() * LogOdds.added(physics.nominal(), physics.atoms(amounts), shift.index());
    }

    private static String assumes(Inquiry inquiry, Shift shift, double[] mass, Estimate share, double um) {
        Situation situation = inquiry.situation();
        Optional<Situation.Other> matrix = situation.others().stream()
            .filter(other -> !other.sameFeature() && other.beamEnergyKev().equals(situation.beamEnergyKev()))
            .findFirst();
        double[] around = AlloyMaterial.massFractions(situation.elements(),
            matrix.map(other -> AlloyMaterial.positive(other.mean())).orElse(situation.nominal()));
        int i = shift.index();
        if (share.low() >= 1) {
            return "All of the signal of " + shift.element() + " comes from a patch of " + Words.number(um)
                + " \u00b5m, secondary fluorescence apart; a flake thinner than the signal's depth is diluted all the same.";
        }
        Estimate own = PatchDilution.trueFraction(mass[i], around[i], share);
        return Words.percent(share.low()) + " to " + Words.percent(share.high()) + " % of the signal of "
            + shift.element() + " come from a round patch of " + Words.number(um) + " \u00b5m. With surroundings "
            + matrix.map(other -> "as in " + other.group()).orElse("of nominal composition")
            + " the patch itself would hold "
            + atomic(situation, mass, i, own.low()) + " to " + atomic(situation, mass, i, own.high()) + " at% "
            + shift.element()
            + "; a flake thinner than the signal's depth is diluted further.";
    }

    /** Atomic percent of an element at another mass fraction, the rest in the measured proportions. */
    private static String atomic(Situation situation, double[] mass, int i, double fraction) {
        if (fraction >= 1) {
            return "100";
        }
        double[] others = mass[i] < 1 ? mass : AlloyMaterial.massFractions(situation.elements(), situation.nominal());
        double[] moved = new double[mass.length];
        for (int j = 0; j < moved.length; j++) {
            moved[j] = j == i ? fraction : others[j] * (1 - fraction) / (1 - others[i]);
        }
        return Words.percent(Closure.convert(moved, situation.elements(), Basis.MASS, Basis.ATOMIC)[i]);
    }
}
