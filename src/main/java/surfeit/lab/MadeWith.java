package surfeit.lab;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What an answer was made with, beside its data.
 *
 * @param method         name of the method
 * @param methodVersion  grows when the same data may get another answer
 * @param programVersion version of this program
 * @param tables         SHA-256 in hex of each reference table, by the table's path
 */
public record MadeWith(String method, int methodVersion, String programVersion, SortedMap<String, String> tables) {
    public MadeWith {
        tables = Collections.unmodifiableSortedMap(new TreeMap<>(tables));
        if (method.isBlank() || programVersion.isBlank()) {
            throw new IllegalArgumentException("An answer names its method and program version, got \"" + method
                + "\" and \"" + programVersion + "\".");
        }
    }

    /** As the canonical constructor, from tables in any order. */
    public static MadeWith of(String method, int methodVersion, String programVersion, Map<String, String> tables) {
        return new MadeWith(method, methodVersion, programVersion, new TreeMap<>(tables));
    }
}
