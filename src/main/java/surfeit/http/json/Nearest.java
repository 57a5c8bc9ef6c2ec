package surfeit.http.json;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import surfeit.element.Spelling;

/** The known word a mistyped one most likely meant, as the end of a refusal. */
public final class Nearest {
    private Nearest() {
    }

    /** The end of a refusal: {@code "; nearest known: tilt_deg."}, or all known words where none is near. */
    public static String hint(String word, Collection<String> known) {
        return of(word, known).map(nearest -> "; nearest known: " + nearest + ".")
            .orElse(known.isEmpty() ? "; none is known here." : "; known: " + String.join(", ", known) + ".");
    }

    /**
     * A word that only lacks its unit ({@code beam_energy} for {@code beam_energy_kev}), else the nearest by spelling.
     */
    static Optional<String> of(String word, Collection<String> known) {
        String plain = word.toLowerCase(Locale.ROOT).replace('-', '_').replace(' ', '_');
        List<String> withUnit = known.stream().filter(each -> plain.length() > 3 && each.startsWith(plain + "_"))
            .toList();
        return withUnit.isEmpty() ? Spelling.nearest(plain, known, 1).stream().findFirst()
            : Optional.of(withUnit.get(0));
    }
}
