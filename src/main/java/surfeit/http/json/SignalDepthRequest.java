package surfeit.http.json;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import surfeit.composition.Basis;
import surfeit.composition.Closure;
import surfeit.composition.Nominal;
import surfeit.composition.NominalFractions;
import surfeit.element.Element;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.xray.Material;
import surfeit.xray.Resolution;
import surfeit.xray.SignalDepthQuery;

/**
 * The question where the X-rays of a composition come from, as JSON:
 * {@code {"alloy": ..., "density_g_cm3": null, "beam_energies_kev": [5, 15], "take_off_angle_deg": 35, "tilt_deg": 0}}.
 *
 * @param alloy           catalogue name, where no nominal is stated
 * @param nominal         the composition itself; it wins over the alloy
 * @param densityGPerCm3  density; the rule of mixtures by volume where it is not stated
 */
public record SignalDepthRequest(Optional<String> alloy, Optional<Nominal> nominal, OptionalDouble densityGPerCm3,
                                 List<Double> beamEnergiesKev, double takeOffDeg, double tiltDeg, Resolution resolution) {
    private static final Keys<Fields> KEYS = new Keys<Fields>("a question of signal depths")
        .key("alloy", (in, fields) -> fields.alloy = in.text())
        .key("nominal", (in, fields) -> fields.nominal = NominalJson.read(in))
        .key("density_g_cm3", (in, fields) -> fields.density = in.number("g/cm3"))
        .key("beam_energies_kev", (in, fields) -> in.array("a list of beam energies in keV",
            () -> in.number("keV").ifPresent(fields.beams::add)))
        .key("take_off_angle_deg", (in, fields) -> in.number("degrees").ifPresent(value -> fields.takeOff = value))
        .key("tilt_deg", (in, fields) -> in.number("degrees").ifPresent(value -> fields.tilt = value))
        .key("detector_fwhm_ev", (in, fields) -> in.number("eV").ifPresent(value -> fields.fwhm = value));

    private static final class Fields {
        private Optional<String> alloy = Optional.empty();
        private Optional<Nominal> nominal = Optional.empty();
        private OptionalDouble density = OptionalDouble.empty();
        private final List<Double> beams = new ArrayList<>();
        private double takeOff = SignalDepthQuery.USUAL_TAKE_OFF_DEG;
        private double tilt;
        private double fwhm = Resolution.USUAL.fwhmAtMnKaEv();
    }

    /** Reads the body. @throws ProblemException with every fault */
    public static SignalDepthRequest read(InputStream body) throws IOException {
        return JsonDocument.read(body, in -> {
            long before = in.faults().count();
            Fields fields = new Fields();
            in.object(KEYS, fields);
            if (in.faults().count() == before && fields.alloy.isEmpty() && fields.nominal.isEmpty()) {
                in.missing("", "nominal", Problem.NOMINAL_INCOMPLETE, "Expected \"alloy\" or \"nominal\", the composition asked about.");
            }
            if (in.faults().count() == before && fields.beams.isEmpty()) {
                in.missing("", "beam_energies_kev", Problem.VALUE_OUT_OF_RANGE, "Expected \"beam_energies_kev\", a list such as [5, 15].");
            }
            return in.faults().count() > before ? Optional.empty() : made(fields);
        });
    }

    private static Optional<SignalDepthRequest> made(Fields fields) {
        try {
            return Optional.of(new SignalDepthRequest(fields.alloy, fields.nominal, fields.density, List.copyOf(fields.beams),
                fields.takeOff, fields.tilt, new Resolution(fields.fwhm)));
        } catch (IllegalArgumentException e) {
            throw new ProblemException(Problem.VALUE_OUT_OF_RANGE, e.getMessage());
        }
    }

    /** The question for the physics, with the middles of the nominal as the material. */
    public SignalDepthQuery query(Nominal composition, SortedSet<Element> others) {
        try {
            NominalFractions fractions = composition.resolve();
            double[] mass = Closure.convert(fractions.middles(), fractions.elements(), Basis.ATOMIC, Basis.MASS);
            Map<Element, Double> byElement = new LinkedHashMap<>();
            for (int i = 0; i < mass.length; i++) {
                if (mass[i] > 0) {
                    byElement.put(fractions.elements().get(i), mass[i]);
                }
            }
            Material material = densityGPerCm3.isPresent() ? Material.of(byElement, densityGPerCm3.getAsDouble())
                : Material.byVolumes(byElement);
            return new SignalDepthQuery(material, beamEnergiesKev, takeOffDeg, tiltDeg, 0, resolution, 0, others);
        } catch (IllegalArgumentException e) {
            throw new ProblemException(Problem.VALUE_OUT_OF_RANGE, e.getMessage());
        }
    }
}
