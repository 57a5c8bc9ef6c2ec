package surfeit.segregation.sums;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import surfeit.segregation.uncertainty.ParticleSums;

/** Adds up the particles of one group for one way of filling values below their limit. Not thread-safe. */
final class RunTally {
    private final Map<String, ParticleTally> particles = new LinkedHashMap<>();
    private final double[][] coSquares;
    private final double[] room;
    private final boolean median;
    private final Function<String, ParticleTally> newParticle;

    RunTally(int elements, boolean median) {
        this.room = new double[elements];
        this.coSquares = new double[elements][elements];
        this.median = median;
        this.newParticle = name -> new ParticleTally(name, elements, median);
    }

    /** A tally that has seen the same spots and goes its own way from here. */
    RunTally copy() {
        RunTally copy = new RunTally(coSquares.length, median);
        particles.forEach((name, tally) -> copy.particles.put(name, tally.copy()));
        for (int i = 0; i < coSquares.length; i++) {
            copy.coSquares[i] = coSquares[i].clone();
        }
        return copy;
    }

    /** A tally of the same elements that has seen no spot. */
    RunTally empty() {
        return new RunTally(coSquares.length, median);
    }

    void add(String particle, double[] closed, double[] partUncertainties) {
        particles.computeIfAbsent(particle, newParticle).add(closed, partUncertainties, coSquares, room);
    }

    /** Takes in later spots; particles that had none so far stand behind those that had. */
    void merge(RunTally later) {
        for (int i = 0; i < coSquares.length; i++) {
            for (int j = 0; j < coSquares.length; j++) {
                coSquares[i][j] += later.coSquares[i][j];
            }
        }
        later.particles.forEach((name, theirs) -> {
            if (particles.containsKey(name)) {
                particles.get(name).merge(theirs, coSquares, room);
            } else {
                particles.put(name, theirs);
            }
        });
    }

    void writeTo(SumsOut out) {
        out.count("particles", particles.size());
        particles.values().forEach(tally -> tally.writeTo(out));
        for (double[] row : coSquares) {
            out.reals("sum of products", row);
        }
    }

    void readFrom(SumsIn in) {
        for (long left = in.count(); left > 0; left--) {
            ParticleTally tally = ParticleTally.readFrom(in, coSquares.length);
            particles.put(tally.name(), tally);
        }
        for (double[] row : coSquares) {
            in.reals(row);
        }
    }

    List<ParticleSums> particleSums() {
        return particles.values().stream().map(ParticleTally::sums).toList();
    }

    double[][] coSquares() {
        return coSquares;
    }
}
