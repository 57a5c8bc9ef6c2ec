package surfeit.http;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/**
 * How the query of an address is written: bytes of UTF-8, those with a meaning of their own as % and two hexadecimal
 * digits (RFC 3986, 2.1). What is written otherwise would be left out or altered without a word, a unit "wt%" first of
 * all.
 */
final class QueryEncoding {
    private static final Pattern ENCODED = Pattern.compile("(?:%[0-9A-Fa-f]{2})+|%");

    private QueryEncoding() {
    }

    /** @throws ProblemException malformed-request */
    static void require(String query) {
        for (String parameter : query.split("&")) {
            Matcher encoded = ENCODED.matcher(parameter);
            while (encoded.find()) {
                if (encoded.group().equals("%")) {
                    throw refused(parameter, "two hexadecimal digits after each % (a percent sign itself is %25, as in "
                        + "unit=at%25)");
                }
                if (!isText(encoded.group())) {
                    throw refused(parameter, "text in UTF-8");
                }
            }
        }
    }

    private static boolean isText(String encoded) {
        byte[] bytes = HexFormat.of().parseHex(encoded.replace("%", ""));
        try {
            StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
            return true;
        } catch (CharacterCodingException e) {
            return false;
        }
    }

    private static ProblemException refused(String parameter, String expected) {
        return new ProblemException(Problem.MALFORMED_REQUEST, "Expected " + expected + " in the query of the address, got \""
            + parameter + "\".");
    }
}
