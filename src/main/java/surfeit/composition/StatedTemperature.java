package surfeit.composition;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A temperature as a handbook states it: one value or a range in °C, and what happens there.
 *
 * @param celsius the text as stated, {@code 779.1}, {@code 217-220} or {@code -19}
 * @param kind    what it is: eutectic, melting range, solidus-liquidus
 */
public record StatedTemperature(String celsius, String kind) {
    private static final Pattern TEXT = Pattern.compile("(-?\\d{1,4}(?:\\.\\d+)?)(?:-(\\d{1,4}(?:\\.\\d+)?))?");

    public StatedTemperature {
        Matcher matcher = TEXT.matcher(celsius);
        boolean rising = matcher.matches()
            && (matcher.start(2) < 0 || Double.parseDouble(matcher.group(1)) < Double.parseDouble(matcher.group(2)));
        if (!rising) {
            throw new IllegalArgumentException(
                "Expected a temperature in °C such as 779.1 or 217-220, got \"" + celsius + "\".");
        }
        if (kind.isBlank()) {
            throw new IllegalArgumentException("A temperature says what happens there, such as eutectic; got nothing.");
        }
    }
}
