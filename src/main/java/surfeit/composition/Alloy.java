package surfeit.composition;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import surfeit.element.Spelling;

/**
 * An alloy of the catalogue or of the lab's own: nominal composition, melting, phases, and where that is from.
 *
 * @param id          the name it is called by in requests, {@code ag-cu-eutectic}
 * @param name        its name for people
 * @param nominal     what it should be made of
 * @param temperature where it melts, if stated
 * @param source      where the figures are from
 * @param sourceRead  whether they were read there
 * @param phases      phases it may be made of; none known is an empty list
 */
public record Alloy(String id, String name, Nominal nominal, Optional<StatedTemperature> temperature, String source,
                    SourceRead sourceRead, List<Phase> phases) {
    private static final Pattern ID = Pattern.compile("(?!\\.+$)[A-Za-z0-9._-]{1,64}");

    public Alloy {
        phases = List.copyOf(phases);
        if (!ID.matcher(id).matches()) {
            throw new IllegalArgumentException("Expected as the id of an alloy 1 to 64 letters, digits, dots, dashes or"
                + " underscores, not dots only, got " + Spelling.quoted(id) + ".");
        }
        if (name.isBlank() || source.isBlank()) {
            throw new IllegalArgumentException("Alloy " + id + " needs a name and a source, got name \"" + name
                + "\" and source \"" + source + "\".");
        }
        for (Phase phase : phases) {
            if (!nominal.parts().keySet().containsAll(phase.systemElements())) {
                throw new IllegalArgumentException("Phases of alloy " + id + " are made of its elements "
                    + nominal.elements() + ", got " + phase.name() + " of " + phase.system() + ".");
            }
        }
    }

    /** Whether another states the same; closing a phase's composition again may change its last bits. */
    public boolean saysTheSameAs(Alloy other) {
        boolean phasesToo = phases.size() == other.phases.size() && IntStream.range(0, phases.size())
            .allMatch(i -> phases.get(i).saysTheSameAs(other.phases.get(i)));
        return phasesToo && withPhases(other.phases).equals(other);
    }

    private Alloy withPhases(List<Phase> others) {
        return new Alloy(id, name, nominal, temperature, source, sourceRead, others);
    }
}
