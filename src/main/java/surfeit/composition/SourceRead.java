package surfeit.composition;

import java.util.Arrays;

/** Whether the figures of a table row were read in the source it names, or are from memory. */
public enum SourceRead {
    YES("yes"),
    /** From memory: the source was not seen. */
    NO("no"),
    /** Some figures were read there, others are from memory; the source text says which. */
    PART("part");

    private final String words;

    SourceRead(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    static SourceRead of(String words) {
        return Arrays.stream(values()).filter(value -> value.words.equals(words)).findFirst()
            .orElseThrow(() -> new IllegalArgumentException("Expected yes, no or part, got \"" + words + "\"."));
    }
}
