package surfeit.cli;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import surfeit.lab.AuditHead;

/** The end of an audit as it is printed, and as it is given back: {@code 1841 rows, head 1841:9f2c...}. */
final class AuditWords {
    private static final Pattern HEAD = Pattern.compile("(\\d{1,18}):([0-9a-f]{64})");

    private AuditWords() {
    }

    static String head(AuditHead head) {
        return head.count() + (head.count() == 1 ? " row" : " rows") + ", head " + head.count() + ":" + head.hash();
    }

    /** @throws IllegalArgumentException saying what was expected */
    static AuditHead read(String text) {
        Matcher matcher = HEAD.matcher(text.strip());
        if (!matcher.matches()) {
            throw new IllegalArgumentException("expected COUNT:HASH as check-audit prints it, got \"" + text + "\"");
        }
        return new AuditHead(Long.parseLong(matcher.group(1)), matcher.group(2));
    }
}
