package surfeit.segregation.phase;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import surfeit.composition.Phase;
import surfeit.element.ElementTable;

/**
 * Finds the known phase a name from a diffraction report means.
 *
 * <p>Names agree if they hold the same formula, in whatever order: {@code Al2Cu}, {@code CuAl2} and {@code θ-Al2Cu}
 * mean {@code theta Al2Cu}; {@code Cu} and {@code (Cu)} mean the solid solution on copper. Without a formula the whole
 * names must agree but for case, blanks and brackets.
 */
final class PhaseNames {
    private static final Pattern PARTS = Pattern.compile("[^A-Za-z0-9]+");
    private static final Pattern PART_OF_FORMULA = Pattern.compile("([A-Z][a-z]?)(\\d*)");

    private PhaseNames() {
    }

    static boolean agree(String stated, Phase phase) {
        Optional<Map<String, Integer>> formula = formula(stated);
        return plain(stated).equals(plain(phase.name()))
            || formula.isPresent() && formula.equals(formula(phase.name()));
    }

    static List<Phase> meant(String stated, List<Phase> phases) {
        return phases.stream().filter(phase -> agree(stated, phase)).toList();
    }

    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[\\s()\\[\\]]", "");
    }

    /** The first formula in a name: atoms by symbol, an unwritten count being one. */
    private static Optional<Map<String, Integer>> formula(String name) {
        List<Map<String, Integer>> found = new ArrayList<>();
        for (String part : PARTS.split(name)) {
            Map<String, Integer> atoms = new TreeMap<>();
            Matcher matcher = PART_OF_FORMULA.matcher(part);
            int end = 0;
            while (matcher.find() && matcher.start() == end
                && ElementTable.standard().bySymbol(matcher.group(1)).isPresent() && matcher.group(2).length() < 4) {
                atoms.merge(matcher.group(1), matcher.group(2).isEmpty() ? 1 : Integer.parseInt(matcher.group(2)),
                    Integer::sum);
                end = matcher.end();
            }
            if (end > 0 && end == part.length()) {
                found.add(atoms);
            }
        }
        return found.stream().findFirst();
    }
}
