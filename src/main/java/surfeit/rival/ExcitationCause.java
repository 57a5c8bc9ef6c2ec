package surfeit.rival;

import java.util.Optional;
import surfeit.xray.Excitation;
import surfeit.xray.Line;

/**
 * A line the beam does not excite, or so barely that a small error of the beam energy changes its intensity much.
 *
 * <pre>   intensity ~ (U - 1)^1.5,  U = E0/Ec </pre>
 *
 * weighed for a beam energy off by {@link GroupPhysics#BEAM_ERROR_KEV}. A value read from a line that is not excited at
 * all is no measurement of that line: nothing bounds it.
 */
final class ExcitationCause {
    private static final Question QUESTION = new Question(Cause.LINE_EXCITATION,
        "Raise the beam energy to at least twice the edge of the line, or read the element from a softer line; check "
            + "the high-energy end of the spectrum for the true beam energy.", Sources.EXCITATION);

    private ExcitationCause() {
    }

    static void weigh(Inquiry inquiry, Shift shift) {
        Optional<GroupPhysics> known = inquiry.atStatedEnergy();
        if (known.isEmpty()) {
            return;
        }
        GroupPhysics physics = known.get();
        for (int j = 0; j < physics.elements().size(); j++) {
            if (physics.signal(j).isEmpty()) {
                inquiry.weigh(QUESTION, shift, Double.POSITIVE_INFINITY,
                    new Draft(missing(physics, j), "The value cannot have come from this line.").evident(true));
                return;
            }
        }
        double reach = physics.beamErrorReach(shift);
        if (Inquiry.worthwhile(shift, reach)) {
            weakest(physics).ifPresent(line -> inquiry.weigh(QUESTION, shift, reach, new Draft(
                (line.overvoltage(physics.beamEnergyKev()) < Excitation.LEAST_OVERVOLTAGE ? "line barely excited: "
                    : "line weakly excited: ") + line + " at " + Words.number(physics.beamEnergyKev())
                    + " keV (overvoltage "
                    + Words.number(line.overvoltage(physics.beamEnergyKev())) + ")",
                "The beam energy at the surface is off by " + Words.number(GroupPhysics.BEAM_ERROR_KEV)
                    + " keV (calibration, charging; judgement).").evident(true)));
        }
    }

    private static String missing(GroupPhysics physics, int j) {
        String at = " at " + Words.number(physics.beamEnergyKev()) + " keV";
        return physics.line(j).map(line -> "line not excited: " + line + at + " (edge at "
                + Words.number(line.edgeEnergyKev()) + " keV)")
            .orElse("line not excited: no line of " + physics.elements().get(j) + " can be used" + at);
    }

    private static Optional<Line> weakest(GroupPhysics physics) {
        Optional<Line> weakest = Optional.empty();
        for (int j = 0; j < physics.elements().size(); j++) {
            Optional<Line> line = physics.line(j);
            if (line.isPresent() && (weakest.isEmpty() || line.get().overvoltage(physics.beamEnergyKev())
                < weakest.get().overvoltage(physics.beamEnergyKev()))) {
                weakest = line;
            }
        }
        return weakest;
    }
}
