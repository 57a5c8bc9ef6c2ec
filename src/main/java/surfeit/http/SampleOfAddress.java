package surfeit.http;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import surfeit.composition.Basis;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.element.UnknownElementException;
import surfeit.http.json.JsonFormat;
import surfeit.http.json.SampleJson;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.spot.Sample;

/**
 * The sample of a bare table, stated in the address: {@code ?alloy=ag-cu-eutectic}, or
 * {@code ?nominal=Ag:60.1,Cu:39.9&unit=at%25}, with any key of a sample that is one word beside it.
 *
 * <p>The words are put into the form a body has and read as one, so that both ways have the same rules.
 */
final class SampleOfAddress {
    private static final List<String> NUMBERS = List.of("beam_energy_kev", "take_off_angle_deg", "detector_fwhm_ev",
        "particle_diameter_um", "margin_odds_ratio", "alpha", "u_level", "reference_correlation");
    private static final List<String> WORDS = List.of("alloy", "accuracy_class", "form", "mount", "spot_centre");
    private static final String NOMINAL = "nominal";
    private static final String EXCLUDED = "excluded_elements";
    private static final String INDEPENDENT = "spots_independent";

    /** The query parameters that say it. */
    static final String[] PARAMETERS = all();

    private SampleOfAddress() {
    }

    private static String[] all() {
        String[] numbersAndWords = java.util.stream.Stream.concat(NUMBERS.stream(), WORDS.stream())
            .toArray(String[]::new);
        String[] all = Arrays.copyOf(numbersAndWords, numbersAndWords.length + 3);
        all[all.length - 3] = NOMINAL;
        all[all.length - 2] = EXCLUDED;
        all[all.length - 1] = INDEPENDENT;
        return all;
    }

    /** @param unit unit of the nominal composition, where it is in the address */
    static Sample read(Parameters parameters, Optional<Basis> unit) throws IOException {
        ByteArrayInputStream body = new ByteArrayInputStream(body(parameters));
        Optional<String> text = parameters.text(NOMINAL);
        return text.isPresent() ? SampleJson.read(body, nominal(text.get(), unit)) : SampleJson.read(body);
    }

    /** A body that holds a sample leaves no room for another in the address. */
    static void requireNone(Parameters parameters) {
        for (String name : PARAMETERS) {
            if (parameters.text(name).isPresent()) {
                throw new ProblemException(Problem.UNKNOWN_PARAMETER, "The query parameter \"" + name
                    + "\" goes with a bare table; a JSON body states its sample itself.");
            }
        }
    }

    /**
     * The unit may stand after the composition, so that it can differ from the table's: {@code Ag:60.1,Cu:39.9 at%}.
     */
    private static Nominal nominal(String text, Optional<Basis> unit) {
        int blank = text.strip().lastIndexOf(' ');
        Optional<Basis> own = blank < 0 ? Optional.empty() : Basis.ofUnit(text.strip().substring(blank + 1));
        return nominal(own.isPresent() ? text.strip().substring(0, blank) : text, own.or(() -> unit), text);
    }

    private static Nominal nominal(String composition, Optional<Basis> unit, String text) {
        Basis basis = unit.orElseThrow(() -> new ProblemException(Problem.UNIT_MISSING,
            "Expected unit=at%25 or unit=wt%25 beside nominal=" + text + " in the address."));
        try {
            return NominalText.parse(composition, basis);
        } catch (UnknownElementException e) {
            throw new ProblemException(Problem.UNKNOWN_ELEMENT, e.getMessage());
        } catch (CompositionException e) {
            throw new ProblemException(Problem.of(e), e.getMessage());
        }
    }

    private static byte[] body(Parameters parameters) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator json = JsonFormat.generator(bytes)) {
            json.writeStartObject();
            for (String name : NUMBERS) {
                Optional<String> text = parameters.text(name);
                if (text.isPresent() && Parameters.NUMBER.matcher(text.get()).matches()) {
                    json.writeFieldName(name);
                    json.writeNumber(text.get());
                } else if (text.isPresent()) {
                    json.writeStringField(name, text.get());
                }
            }
            for (String name : WORDS) {
                if (parameters.text(name).isPresent()) {
                    json.writeStringField(name, parameters.text(name).get());
                }
            }
            if (parameters.text(EXCLUDED).isPresent()) {
                json.writeArrayFieldStart(EXCLUDED);
                for (String symbol : parameters.text(EXCLUDED).get().split(",")) {
                    json.writeString(symbol.strip());
                }
                json.writeEndArray();
            }
            if (parameters.text(INDEPENDENT).isPresent()) {
                json.writeBooleanField(INDEPENDENT, parameters.flag(INDEPENDENT));
            }
            json.writeEndObject();
        }
        return bytes.toByteArray();
    }
}
