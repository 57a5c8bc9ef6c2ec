package surfeit.intake;

import java.util.regex.Pattern;

/** What a printed text looks like where it is no plain number. */
final class PrintedNumber {
    private static final Pattern GROUPED = Pattern.compile(
        "[+-]?\\d{1,3}([.,' \u00A0\u2009\u202F\u2019]\\d{3})+([.,]\\d*)?|[+-]?\\d+[.,]\\d+[.,]\\d*");
    private static final Pattern MAYBE_THOUSANDS = Pattern.compile("[+-]?[1-9]\\d{0,2}[.,]\\d{3}");
    private static final Pattern PLAIN = Pattern.compile("[+-]?(\\d+[.,]?\\d*|[.,]\\d+)([eE][+-]?\\d{1,2})?");

    /** {@code 12. Apr}, {@code Jan 62}, {@code 12.03.2026}: what a spreadsheet makes of a number it takes for a date. */
    private static final String MONTH = "(jan|feb|m\u00E4r|mar|mrz|apr|mai|may|jun|jul|aug|sept?|okt|oct|nov|dez|dec)\\.?";
    private static final Pattern DATE = Pattern.compile("\\d{1,2}[. -]+" + MONTH + "|" + MONTH + "[. -]+\\d{2,4}"
        + "|\\d{1,2}\\.\\d{1,2}\\.(\\d{4})?|\\d{4}-\\d\\d-\\d\\d.*", Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

    private PrintedNumber() {
    }

    /** True for {@code 1.234,5}, {@code 1'234} and {@code 1 234}: digits with more than a decimal mark in them. */
    static boolean isGrouped(String text) {
        return text.length() <= NumberReader.LENGTH_MAX && GROUPED.matcher(text).matches();
    }

    /** True for {@code 1,234}, which is a thousand to one reader and one to another. */
    static boolean maySeparateThousands(String text) {
        return MAYBE_THOUSANDS.matcher(text).matches();
    }

    /** True for what a spreadsheet leaves of a number it took for a date. */
    static boolean isDate(String text) {
        return text.length() <= NumberReader.LENGTH_MAX && DATE.matcher(text).matches();
    }

    static boolean isPlain(String text) {
        return text.length() <= NumberReader.LENGTH_MAX && PLAIN.matcher(text).matches();
    }
}
