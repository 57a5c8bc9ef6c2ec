package surfeit.http.json;

import java.io.IOException;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import surfeit.composition.Nominal;
import surfeit.lab.Problem;
import surfeit.xray.Patch;
import surfeit.xray.TakeOff;
import surfeit.xray.ThinFilm;

/**
 * What lies on or in a surface, and where on a particle the beam meets it, as requests state it:
 * {@code {"residue": "silicone-oil", "thickness_nm": 20}}, {@code {"nominal": ..., "diameter_um": 1.2}},
 * {@code {"diameter_um": 30, "offset_um": 5, "azimuth_deg": 0}}.
 */
final class SurfaceJson {
    private static final double NM_PER_UM = 1000;
    private static final Keys<FilmFields> FILM = new Keys<FilmFields>("a film")
        .key("alloy", (in, fields) -> fields.material.readAlloy(in))
        .key("nominal", (in, fields) -> fields.material.readNominal(in))
        .key("residue", (in, fields) -> fields.material.readResidue(in))
        .key("density_g_cm3", (in, fields) -> fields.material.readDensity(in))
        .key("thickness_nm", (in, fields) -> fields.thickness = in.number("nm"));
    private static final Keys<PatchFields> PATCH = new Keys<PatchFields>("a patch")
        .key("alloy", (in, fields) -> fields.material.readAlloy(in))
        .key("nominal", (in, fields) -> fields.material.readNominal(in))
        .key("density_g_cm3", (in, fields) -> fields.material.readDensity(in))
        .key("diameter_um", (in, fields) -> fields.diameter = in.number("um"))
        .key("thickness_nm", (in, fields) -> fields.thickness = in.number("nm"));
    private static final Keys<SphereFields> SPHERE = new Keys<SphereFields>("a place on a sphere")
        .key("diameter_um", (in, fields) -> fields.diameter = in.number("um"))
        .key("offset_um", (in, fields) -> fields.offset = in.number("um"))
        .key("azimuth_deg", (in, fields) -> fields.azimuth = in.number("degrees"));

    /** A film whose material is still to be found. */
    record StatedFilm(StatedMaterial material, double thicknessNm) {
        ThinFilm film(Function<String, Nominal> alloys) {
            return new ThinFilm(material.material(alloys), thicknessNm);
        }
    }

    /** A patch whose material is still to be found. */
    record StatedPatch(StatedMaterial material, double diameterUm, OptionalDouble thicknessNm) {
        Patch patch(Function<String, Nominal> alloys) {
            return new Patch(material.material(alloys), diameterUm * NM_PER_UM, thicknessNm);
        }
    }

    /** How far from the top of a sphere the beam meets it, in um, and in which direction seen from the detector. */
    record OnSphere(double diameterUm, double offsetUm, double azimuthDeg) {
        double tiltDeg() {
            return TakeOff.tiltOnSphereDeg(diameterUm, offsetUm);
        }
    }

    private static final class FilmFields {
        private final StatedMaterial.Fields material = new StatedMaterial.Fields();
        private OptionalDouble thickness = OptionalDouble.empty();
    }

    private static final class PatchFields {
        private final StatedMaterial.Fields material = new StatedMaterial.Fields();
        private OptionalDouble diameter = OptionalDouble.empty();
        private OptionalDouble thickness = OptionalDouble.empty();
    }

    private static final class SphereFields {
        private OptionalDouble diameter = OptionalDouble.empty();
        private OptionalDouble offset = OptionalDouble.empty();
        private OptionalDouble azimuth = OptionalDouble.empty();
    }

    private SurfaceJson() {
    }

    static Optional<StatedFilm> film(JsonInput in) throws IOException {
        String pointer = in.pointer();
        long before = in.faults().count();
        FilmFields fields = new FilmFields();
        in.object(FILM, fields);
        if (in.faults().count() == before) {
            oneComposition(in, pointer, fields.material, "\"alloy\", \"nominal\" or \"residue\"");
            required(in, pointer, "thickness_nm", fields.thickness, "the thickness of the film in nm");
        }
        return in.faults().count() > before ? Optional.empty()
            : Optional.of(new StatedFilm(fields.material.stated(), fields.thickness.orElseThrow()));
    }

    static Optional<StatedPatch> patch(JsonInput in) throws IOException {
        String pointer = in.pointer();
        long before = in.faults().count();
        PatchFields fields = new PatchFields();
        in.object(PATCH, fields);
        if (in.faults().count() == before) {
            oneComposition(in, pointer, fields.material, "\"alloy\" or \"nominal\"");
            required(in, pointer, "diameter_um", fields.diameter, "the diameter of the patch in um");
        }
        return in.faults().count() > before ? Optional.empty() : Optional.of(
            new StatedPatch(fields.material.stated(), fields.diameter.orElseThrow(), fields.thickness));
    }

    static Optional<OnSphere> onSphere(JsonInput in) throws IOException {
        String pointer = in.pointer();
        long before = in.faults().count();
        SphereFields fields = new SphereFields();
        in.object(SPHERE, fields);
        if (in.faults().count() == before) {
            required(in, pointer, "diameter_um", fields.diameter, "the diameter of the particle in um");
            required(in, pointer, "offset_um", fields.offset, "how far from its top the beam meets it, in um");
        }
        return in.faults().count() > before ? Optional.empty() : Optional.of(new OnSphere(
            fields.diameter.orElseThrow(), fields.offset.orElseThrow(), fields.azimuth.orElse(0)));
    }

    private static void oneComposition(JsonInput in, String pointer, StatedMaterial.Fields material, String ways) {
        if (material.ways() != 1) {
            in.missing(pointer, "nominal", Problem.NOMINAL_INCOMPLETE, "Expected one of " + ways + ", got "
                + material.ways() + " of them.");
        }
    }

    private static void required(JsonInput in, String pointer, String key, OptionalDouble value, String what) {
        if (value.isEmpty()) {
            in.missing(pointer, key, Problem.VALUE_OUT_OF_RANGE, "Expected \"" + key + "\", " + what + ".");
        }
    }
}
