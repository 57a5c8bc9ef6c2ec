package surfeit.http.json;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.function.Function;
import surfeit.composition.Nominal;
import surfeit.element.Element;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.xray.Resolution;
import surfeit.xray.SignalDepthQuery;
import surfeit.xray.SurfaceReadings;

/**
 * The question where the X-rays of a composition come from, as JSON:
 * {@code {"alloy": ..., "density_g_cm3": null, "beam_energies_kev": [5, 15], "take_off_angle_deg": 35, "tilt_deg": 0}};
 * beside it a film or a small patch whose readings are asked for.
 */
public final class SignalDepthRequest {
    private static final Keys<Fields> KEYS = new Keys<Fields>("a question of signal depths")
        .key("alloy", (in, fields) -> fields.material.readAlloy(in))
        .key("nominal", (in, fields) -> fields.material.readNominal(in))
        .key("density_g_cm3", (in, fields) -> fields.material.readDensity(in))
        .key("beam_energies_kev", (in, fields) -> in.array("a list of beam energies in keV",
            () -> in.number("keV").ifPresent(fields.beams::add)))
        .key("top_depths_nm", (in, fields) -> in.array("a list of thicknesses in nm",
            () -> in.number("nm").ifPresent(fields.tops::add)))
        .key("take_off_angle_deg", (in, fields) -> in.number("degrees").ifPresent(value -> fields.takeOff = value))
        .key("tilt_deg", (in, fields) -> fields.tilt = in.number("degrees"))
        .key("tilt_azimuth_deg", (in, fields) -> fields.azimuth = in.number("degrees"))
        .key("on_sphere", (in, fields) -> fields.onSphere = SurfaceJson.onSphere(in))
        .key("probe_diameter_nm", (in, fields) -> in.number("nm").ifPresent(value -> fields.probe = value))
        .key("detector_fwhm_ev", (in, fields) -> in.number("eV").ifPresent(value -> fields.fwhm = value))
        .key("film", (in, fields) -> fields.film = SurfaceJson.film(in))
        .key("patch", (in, fields) -> fields.patch = SurfaceJson.patch(in));

    private static final class Fields {
        private final StatedMaterial.Fields material = new StatedMaterial.Fields();
        private final List<Double> beams = new ArrayList<>();
        private final List<Double> tops = new ArrayList<>();
        private double takeOff = SignalDepthQuery.USUAL_TAKE_OFF_DEG;
        private OptionalDouble tilt = OptionalDouble.empty();
        private OptionalDouble azimuth = OptionalDouble.empty();
        private Optional<SurfaceJson.OnSphere> onSphere = Optional.empty();
        private double probe;
        private double fwhm = Resolution.USUAL.fwhmAtMnKaEv();
        private Optional<SurfaceJson.StatedFilm> film = Optional.empty();
        private Optional<SurfaceJson.StatedPatch> patch = Optional.empty();
    }

    private final Fields stated;
    private final StatedMaterial material;

    private SignalDepthRequest(Fields stated) {
        this.stated = stated;
        this.material = stated.material.stated();
    }

    /** Reads the body. @throws ProblemException with every fault */
    public static SignalDepthRequest read(InputStream body) throws IOException {
        return JsonDocument.read(body, in -> {
            long before = in.faults().count();
            Fields fields = new Fields();
            in.object(KEYS, fields);
            if (in.faults().count() == before && fields.material.ways() == 0) {
                in.missing("", "nominal", Problem.NOMINAL_INCOMPLETE,
                    "Expected \"alloy\" or \"nominal\", the composition asked about.");
            }
            if (in.faults().count() == before && fields.beams.isEmpty()) {
                in.missing("", "beam_energies_kev", Problem.VALUE_OUT_OF_RANGE,
                    "Expected \"beam_energies_kev\", a list such as [5, 15].");
            }
            if (in.faults().count() == before && fields.onSphere.isPresent()
                && (fields.tilt.isPresent() || fields.azimuth.isPresent())) {
                in.missing("", "on_sphere", Problem.VALUE_OUT_OF_RANGE,
                    "Expected \"tilt_deg\" or \"on_sphere\", got both: the place "
                    + "on a sphere is a tilt.");
            }
            return in.faults().count() > before ? Optional.empty() : Optional.of(new SignalDepthRequest(fields));
        });
    }

    /** The catalogue name of the material, where it goes by that. */
    public Optional<String> alloyName() {
        return material.nominal().isPresent() ? Optional.empty() : material.alloy();
    }

    /**
     * The question for the physics.
     *
     * @param alloys finds the nominal of a catalogue name
     * @param others elements outside the material whose peaks may fall on its lines
     * @throws ProblemException where a value lies outside what the models take
     */
    public SurfaceReadings.Question question(Function<String, Nominal> alloys, SortedSet<Element> others) {
        try {
            double tilt = stated.onSphere.map(SurfaceJson.OnSphere::tiltDeg).orElse(stated.tilt.orElse(0));
            double azimuth = stated.onSphere.map(SurfaceJson.OnSphere::azimuthDeg).orElse(stated.azimuth.orElse(0));
            SignalDepthQuery depths = new SignalDepthQuery(material.material(alloys), stated.beams, stated.takeOff, tilt,
                azimuth, new Resolution(stated.fwhm), stated.probe, others,
                stated.tops.isEmpty() ? SignalDepthQuery.USUAL_TOP_DEPTHS_NM : stated.tops);
            return new SurfaceReadings.Question(depths, stated.film.map(film -> film.film(alloys)),
                stated.patch.map(patch -> patch.patch(alloys)));
        } catch (IllegalArgumentException e) {
            throw new ProblemException(Problem.VALUE_OUT_OF_RANGE, e.getMessage());
        }
    }
}
