package surfeit.xray;

import java.util.List;
import java.util.Optional;

/**
 * Where the X-rays of a material come from, and what a tilt, a film or a small patch makes of its readings; each of
 * these alone. Immutable, thread-safe.
 *
 * @param readings one per beam energy, in the order of the question
 */
public record SurfaceReadings(Question question, SignalDepths depths, List<AtBeamEnergy> readings) {

    /** A material with what lies on it or in it. */
    public record Question(SignalDepthQuery depths, Optional<ThinFilm> film, Optional<Patch> patch) {
    }

    /** What is read at one beam energy; the tilt's is empty on a level surface, the others where not asked for. */
    public record AtBeamEnergy(Optional<TiltReading> tilt, Optional<FilmReading> film, Optional<PatchReading> patch) {
    }

    public SurfaceReadings {
        readings = List.copyOf(readings);
    }

    /** Answers a question; profiles already known to the cache are not worked out again. */
    public static SurfaceReadings of(Question question, ProfileCache profiles) {
        SignalDepthQuery query = question.depths();
        return new SurfaceReadings(question, SignalDepths.of(query, profiles), query.beamEnergiesKev().stream()
            .map(beam -> new AtBeamEnergy(
                query.tiltDeg() == 0 ? Optional.empty() : Optional.of(TiltReading.of(query, beam, profiles)),
                question.film().map(film -> FilmReading.of(film, query, beam, profiles)),
                question.patch().map(patch -> PatchReading.of(patch, query, beam, profiles)))).toList());
    }
}
