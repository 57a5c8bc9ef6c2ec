package surfeit.lab;

/**
 * How an upload is to be treated.
 *
 * @param onError      what happens to the good rows where others have faults
 * @param validateOnly true to do everything and then take it back
 */
public record ImportOptions(OnError onError, boolean validateOnly) {
    /** All or nothing, for real. */
    public static final ImportOptions DEFAULT = new ImportOptions(OnError.REFUSE, false);

    /** What happens to the good rows where others have faults. */
    public enum OnError {
        /** All rows or none. */
        REFUSE("refuse"),
        /** Good rows are recorded, the others given back. */
        SKIP("skip");

        private final String word;

        OnError(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
