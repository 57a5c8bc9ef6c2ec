package surfeit.segregation.answer;

/** What a verdict speaks about. */
public enum Scope {
    /** Particles of this kind: three or more were measured (two: marked weak). */
    PARTICLES("particles"),
    /** The measured particles themselves. */
    THESE_PARTICLES("these_particles"),
    /** The one measured particle. */
    THIS_PARTICLE("this_particle"),
    /** The one measured spot. */
    THIS_SPOT("this_spot");

    private final String word;

    Scope(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
