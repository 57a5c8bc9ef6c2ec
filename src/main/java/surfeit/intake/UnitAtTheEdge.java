package surfeit.intake;

import java.util.Optional;
import surfeit.composition.Basis;

/**
 * A name with a unit behind or before it: {@code Spot 1 (at%)}, {@code at% Spot 1}, or a unit alone.
 *
 * @param name what is left, exactly as it was sent
 */
record UnitAtTheEdge(String name, Optional<Basis> unit) {
    private static final String PARTING = " \t\u00A0\u202F_,:;([/{";
    private static final int LENGTH_MAX = 200;

    static UnitAtTheEdge of(String raw) {
        String text = CellText.strip(raw);
        if (text.length() > LENGTH_MAX) {
            return new UnitAtTheEdge(text, Optional.empty());
        }
        for (int i = 0; i < text.length(); i++) {
            if (i == 0 || PARTING.indexOf(text.charAt(i)) >= 0) {
                Optional<Basis> unit = UnitWords.basis(bare(text.substring(i)));
                if (unit.isPresent()) {
                    return new UnitAtTheEdge(withoutParting(text.substring(0, i)), unit);
                }
            }
        }
        for (int i = text.length() - 1; i > 0; i--) {
            if (PARTING.indexOf(text.charAt(i)) >= 0) {
                Optional<Basis> unit = UnitWords.basis(bare(text.substring(0, i)));
                if (unit.isPresent()) {
                    return new UnitAtTheEdge(CellText.strip(text.substring(i + 1)), unit);
                }
            }
        }
        return new UnitAtTheEdge(text, Optional.empty());
    }

    private static String bare(String text) {
        return text.replaceAll("[\\[\\](){}_:;,/]", " ");
    }

    private static String withoutParting(String text) {
        int end = text.length();
        while (end > 0 && PARTING.indexOf(text.charAt(end - 1)) >= 0) {
            end--;
        }
        return text.substring(0, end);
    }
}
