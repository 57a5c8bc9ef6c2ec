package surfeit.lab;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * An answer as it is to be kept for ever.
 *
 * @param madeWith the method, program and tables it was made with
 * @param texts    the whole answer in each form it is kept in, by the form's name ({@code json}, {@code csv} ...)
 */
public record FrozenAnswer(MadeWith madeWith, SortedMap<String, String> texts) {
    public FrozenAnswer {
        texts = Collections.unmodifiableSortedMap(new TreeMap<>(texts));
        if (texts.isEmpty()) {
            throw new IllegalArgumentException("An answer is kept in one form at least.");
        }
    }
}
