package surfeit.http.board;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import surfeit.report.html.HtmlText;

/**
 * How numbers look on a page: with a decimal point, or with the decimal comma of German and most of Europe.
 *
 * <p>Pages are made with points; the comma replaces them in what is shown, never in attributes, in names of the lab or
 * in what is no decimal number (versions, times). Both keep digits ungrouped, so that neither mark can be misread.
 */
public enum NumberDisplay {
    POINT("point", "1.5"),
    COMMA("comma", "1,5");

    private static final Pattern DECIMAL = Pattern.compile("(?<![\\w.,])(\\d+)\\.(\\d+)(?![\\w/]|[.,]\\d)");
    /** A tag, or a name of the lab with its tags. */
    private static final Pattern MARKUP = Pattern.compile("<bdi>.*?</bdi>|<[^>]*>", Pattern.DOTALL);
    private static final List<String> WITH_COMMA = List.of("de", "fr", "it", "es", "nl", "pl", "cs", "da", "sv", "nb",
        "no", "fi", "pt", "ru", "tr");

    private final String word;
    private final String example;

    NumberDisplay(String word, String example) {
        this.word = word;
        this.example = example;
    }

    /** As in addresses. */
    public String word() {
        return word;
    }

    String example() {
        return example;
    }

    /** The other one. */
    NumberDisplay other() {
        return this == POINT ? COMMA : POINT;
    }

    /**
     * The one that readers of a language are used to, by what their browser says of it; a point where it says nothing.
     */
    public static NumberDisplay of(String acceptLanguage) {
        return List.of(acceptLanguage.toLowerCase(Locale.ROOT).split(",")).stream()
            .max(Comparator.comparingDouble(NumberDisplay::quality))
            .filter(range -> WITH_COMMA.contains(range.strip().split("[-;]")[0]))
            .map(range -> COMMA).orElse(POINT);
    }

    private static double quality(String range) {
        Matcher quality = Pattern.compile(";\\s*q=([01](?:\\.\\d{0,3})?)").matcher(range);
        return quality.find() ? Double.parseDouble(quality.group(1)) : 1;
    }

    /**
     * A page as it is to be shown.
     *
     * @param names words of the lab that stand in its sentences
     */
    String shown(String page, Collection<String> names) {
        if (this == POINT) {
            return page;
        }
        Pattern kept = kept(names);
        StringBuilder shown = new StringBuilder(page.length());
        Matcher markup = kept.matcher(page);
        int at = 0;
        while (markup.find()) {
            shown.append(DECIMAL.matcher(page.substring(at, markup.start())).replaceAll("$1,$2"))
                .append(markup.group());
            at = markup.end();
        }
        return shown.append(DECIMAL.matcher(page.substring(at)).replaceAll("$1,$2")).toString();
    }

    private static Pattern kept(Collection<String> names) {
        String words = names.stream().map(HtmlText::escaped).filter(name -> DECIMAL.matcher(name).find())
            .map(Pattern::quote).collect(Collectors.joining("|"));
        return words.isEmpty() ? MARKUP : Pattern.compile(MARKUP.pattern() + "|" + words, Pattern.DOTALL);
    }
}
