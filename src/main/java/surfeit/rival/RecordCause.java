package surfeit.rival;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import surfeit.xray.BeamEnergy;

/**
 * What the record of the measurement leaves open: the beam energy, a session that goes with the feature, one particle
 * that carries the shift, too few particles, a detection limit above nominal.
 */
final class RecordCause {
    /** An assumed detection limit may be this much too low (judgement). */
    private static final double ASSUMED_LIMIT_OFF = 3;
    /** Standard uncertainties of a session's calibration that are taken as its most. */
    private static final double SESSION_SIGMAS = 1.96;
    private static final Question ENERGY = new Question(Cause.BEAM_ENERGY,
        "State the beam energy of every spot; other energies excite other lines and see another depth.",
        Sources.PRACTICE);
    private static final Question SESSION = new Question(Cause.FEATURE_WITH_SESSION,
        "Measure this feature and another one in one session.", "Accuracy class of the concentrations");
    private static final Question ONE = new Question(Cause.ONE_PARTICLE,
        "Look at this particle again, and measure more particles.", Sources.ARITHMETIC);
    private static final Question FEW = new Question(Cause.FEW_PARTICLES,
        "Measure at least three particles of the kind.", Sources.PRACTICE);
    private static final Question LIMIT = new Question(Cause.DETECTION_LIMIT,
        "State the detection limit or the counts; lower it by live time, beam current or a better excited line.",
        "Hierarchy of limits after Currie 1968, from memory");

    private RecordCause() {
    }

    static void weighGroup(Inquiry inquiry, Shift leading) {
        energy(inquiry);
        session(inquiry, leading);
        few(inquiry);
    }

    static void weigh(Inquiry inquiry, Shift shift) {
        shift.carrier().ifPresent(carrier -> carried(inquiry, shift, carrier));
        shift.limit().ifPresent(limit -> limit(inquiry, shift, limit));
    }

    private static void energy(Inquiry inquiry) {
        Situation situation = inquiry.situation();
        if (situation.beamEnergyKev().isEmpty()) {
            inquiry.name(ENERGY, Rival.CouldExplain.IN_PART, new Draft("beam energy not stated: energies may be mixed",
                "Whatever depends on the beam was weighed from 5 to 30 keV.").ofGroup().needing("beam_energy_kev"));
        } else if (inquiry.atStatedEnergy().isEmpty()) {
            inquiry.name(ENERGY, Rival.CouldExplain.IN_PART, new Draft("beam energy of "
                + Words.number(situation.beamEnergyKev().getAsDouble()) + " keV lies outside the models",
                "The models hold from " + Words.number(BeamEnergy.LOWEST_KEV) + " to "
                + Words.number(BeamEnergy.HIGHEST_KEV)
                    + " keV; tilt, films, overlaps and depth were not weighed.").ofGroup());
        }
    }

    /** Measured in sessions of its own, while every other feature was measured in others. */
    private static void session(Inquiry inquiry, Shift leading) {
        Set<String> own = inquiry.evidence().sessions();
        if (!inquiry.situation().labelled() || own.isEmpty() || inquiry.situation().others().isEmpty()) {
            return;
        }
        List<Situation.Other> others = inquiry.situation().others().stream().filter(other -> !other.sameFeature())
            .toList();
        List<Situation.Other> same = inquiry.situation().others().stream().filter(Situation.Other::sameFeature)
            .toList();
        Set<String> featureSessions = same.stream().flatMap(other -> other.sessions().stream())
            .collect(Collectors.toSet());
        featureSessions.addAll(own);
        boolean apart = !others.isEmpty() && others.stream().allMatch(other -> !other.sessions().isEmpty()
            && other.sessions().stream().noneMatch(featureSessions::contains));
        if (apart) {
            inquiry.weigh(SESSION, leading, SESSION_SIGMAS * leading.shared(), new Draft(
                "feature and session go together: " + inquiry.situation().group() + " was only measured in "
                    + own.stream().sorted().collect(Collectors.joining(", ")),
                "The calibration of that session is off by 1.96 standard uncertainties of the accuracy class.")
                .ofGroup()
                .atMostInPart().keptAnyway().evident(true));
        }
    }

    private static void few(Inquiry inquiry) {
        int particles = inquiry.situation().particles();
        if (particles < 3) {
            inquiry.name(FEW, Rival.CouldExplain.IN_PART, new Draft(particles == 1
                ? "too few particles: only one was measured" : "too few particles: only two were measured",
                "Others may be nominal; nothing measured speaks for them.").ofGroup().evident(true));
        }
    }

    private static void carried(Inquiry inquiry, Shift shift, Shift.Carrier carrier) {
        double reach = shift.size() - shift.direction() * carrier.left();
        double fair = shift.size() / carrier.particles();
        if (carrier.particles() > 2 && reach > fair && Inquiry.worthwhile(shift, reach)) {
            inquiry.weigh(ONE, shift, reach, new Draft("one particle carries it: " + carrier.particle(),
                "Without it the mean of the others stands.").evident(true));
        }
    }

    private static void limit(Inquiry inquiry, Shift shift, Shift.Limit limit) {
        double highest = limit.fraction() * (limit.assumed() ? ASSUMED_LIMIT_OFF : 1);
        if (shift.up() || highest < shift.nominal()) {
            return;
        }
        boolean above = limit.fraction() >= shift.nominal();
        String nominal = limit.ofRange() ? "the lower limit of nominal" : "nominal";
        String words = above ? "detection limit of " : "detection limit may lie above " + nominal + ": assumed as ";
        Draft draft = new Draft(words + Words.percent(limit.fraction()) + " at%"
            + (above ? " lies above " + nominal + (limit.assumed() ? " (assumed)" : "") : ""),
            limit.spots() + (limit.spots() == 1 ? " spot has" : " spots have") + " the element below it"
                + (limit.assumed() ? "; the true limit may be three times the assumed one (judgement)." : "."))
            .of(shift.element()).evident(true);
        inquiry.name(LIMIT, Rival.CouldExplain.YES, limit.assumed() ? draft.needing("limit") : draft);
    }
}
