package surfeit.intake;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import surfeit.element.Element;
import surfeit.element.ElementTable;

/**
 * An element as tables write it: {@code Ag}, {@code AgL}, {@code silver}.
 *
 * <p>Symbols are matched exactly, names in any case. A line written onto the symbol is one of K, L and M: with N, BN and
 * AlN would be elements.
 *
 * @param line           the X-ray line written with it
 * @param isCertainAlone false where only a unit beside it tells that an element is meant: {@code OK}, {@code lead}
 */
record ElementText(Element element, Optional<String> line, boolean isCertainAlone) {
    private static final Pattern WITH_LINE = Pattern.compile("([A-Z][a-z]?)([KLM]([ab\u03B1\u03B2][0-9]?)?)");

    /** The element one word means, if it means one. */
    static Optional<ElementText> read(String word) {
        Optional<Element> symbol = ElementTable.standard().bySymbol(word);
        if (symbol.isPresent()) {
            return Optional.of(new ElementText(symbol.get(), Optional.empty(), true));
        }
        Matcher matcher = WITH_LINE.matcher(word);
        if (matcher.matches()) {
            return ElementTable.standard().bySymbol(matcher.group(1)).map(element ->
                new ElementText(element, Optional.of(matcher.group(2)), matcher.group(1).length() == 2));
        }
        return ElementTable.standard().byName(word).map(element -> new ElementText(element, Optional.empty(), false));
    }
}
