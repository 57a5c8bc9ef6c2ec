package surfeit.storage;

import java.util.function.Function;

/** Finds the constant behind a word on record. */
final class StoredWords {
    private StoredWords() {
    }

    static <T> T find(String what, String word, T[] constants, Function<T, String> words) {
        for (T constant : constants) {
            if (words.apply(constant).equals(word)) {
                return constant;
            }
        }
        throw new StorageException("The record has a " + what + " \"" + word
            + "\", which this program does not know. Use the program version that wrote it.");
    }
}
