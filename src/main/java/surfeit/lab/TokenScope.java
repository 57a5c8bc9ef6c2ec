package surfeit.lab;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** One kind of thing a token may be used for; none includes another. */
public enum TokenScope {
    /** Reads samples, spots, imports, answers and events; interprets what is sent along. */
    READ,
    /** Describes samples and alloys, records spots, freezes answers. */
    WRITE,
    /** Corrects and withdraws spots. */
    CORRECT,
    /** Makes and revokes tokens, reads the audit, fetches backups. */
    ADMIN,
    /** Reads the counters of the running service. */
    METRICS;

    /** The word requests and documents use. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The scope with this word, if there is one. */
    public static Optional<TokenScope> ofWord(String word) {
        return Arrays.stream(values()).filter(scope -> scope.word().equals(word)).findFirst();
    }
}
