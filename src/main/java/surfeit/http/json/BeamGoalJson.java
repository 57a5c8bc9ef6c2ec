package surfeit.http.json;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import surfeit.segregation.plan.BeamGoal;
import surfeit.segregation.plan.PlanException;
import surfeit.xray.BeamQuery;
import surfeit.xray.BeamQuestion;

/** Reads what a beam energy is wanted for: {@code {"question": "patch", "patch_diameter_um": 1.2}}. */
final class BeamGoalJson {
    /** The questions in the words of a request. */
    private enum Question {
        SURFACE_FILM("surface film"), PATCH("patch"), BULK("bulk");

        private final String word;

        Question(String word) {
            this.word = word;
        }

        String word() {
            return word;
        }
    }

    private static final Keys<Fields> KEYS = new Keys<Fields>("a question for a beam energy")
        .key("question", (in, fields) -> fields.question = SampleJson.oneOf(in, Question.values(), Question::word))
        .key("patch_diameter_um", (in, fields) -> fields.patch = in.number("um"))
        .key("beam_energies_kev", (in, fields) -> in.array("a list of beam energies in keV",
            () -> in.number("keV").ifPresent(fields.beams::add)))
        .key("probe_diameter_nm", (in, fields) -> fields.probe = in.number("nm"))
        .key("density_g_cm3", (in, fields) -> fields.density = in.number("g/cm3"));

    private static final class Fields {
        private Optional<Question> question = Optional.empty();
        private OptionalDouble patch = OptionalDouble.empty();
        private final List<Double> beams = new ArrayList<>();
        private OptionalDouble probe = OptionalDouble.empty();
        private OptionalDouble density = OptionalDouble.empty();
    }

    private BeamGoalJson() {
    }

    /** @throws PlanException for a question that is none, or a patch without a size */
    static Optional<BeamGoal> read(JsonInput in) throws IOException {
        long before = in.faults().count();
        Fields fields = new Fields();
        in.object(KEYS, fields);
        return in.faults().count() > before ? Optional.empty() : Optional.of(made(fields));
    }

    private static BeamGoal made(Fields fields) {
        return new BeamGoal(question(fields), fields.beams.isEmpty() ? BeamQuery.USUAL_ENERGIES_KEV : fields.beams,
            fields.probe.orElse(0), fields.density);
    }

    private static BeamQuestion question(Fields fields) {
        Question asked = fields.question.orElseThrow(() -> new PlanException("Expected \"question\" in \"beam\": "
            + "\"surface film\", \"patch\" or \"bulk\"."));
        if (fields.patch.isPresent() != (asked == Question.PATCH)) {
            throw new PlanException(asked == Question.PATCH
                ? "Expected \"patch_diameter_um\" beside the question \"patch\", the diameter of the patch in um."
                : "Expected \"patch_diameter_um\" only beside the question \"patch\", got it beside \"" + asked.word()
                    + "\".");
        }
        try {
            return switch (asked) {
                case SURFACE_FILM -> new BeamQuestion.SurfaceFilm();
                case PATCH -> new BeamQuestion.Patch(fields.patch.orElseThrow());
                case BULK -> new BeamQuestion.Bulk();
            };
        } catch (IllegalArgumentException e) {
            throw new PlanException(e.getMessage());
        }
    }

    static String word(BeamQuestion question) {
        return (question instanceof BeamQuestion.SurfaceFilm ? Question.SURFACE_FILM
            : question instanceof BeamQuestion.Patch ? Question.PATCH : Question.BULK).word();
    }
}
