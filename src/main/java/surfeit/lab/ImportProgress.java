package surfeit.lab;

/** Hears how far an import has come. */
public interface ImportProgress {
    /** Nobody listens. */
    ImportProgress UNHEARD = spotCount -> { };

    /**
     * Some more spots were dealt with; nothing is recorded before the import is complete.
     *
     * @param spotCount how many in all: new, known and rejected ones. Grows, and is told once in a few hundred spots.
     */
    void done(long spotCount);
}
