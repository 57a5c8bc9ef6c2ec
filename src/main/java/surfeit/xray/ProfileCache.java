package surfeit.xray;

import java.util.SortedMap;
import surfeit.element.Element;

/**
 * Depth profiles already worked out, so that the same alloy, line and beam energy cost nothing a second time.
 *
 * <p>Bounded: the least recently used profile leaves first. Thread-safe.
 */
public final class ProfileCache {
    /** Some hundred alloys at several beam energies; about 100 bytes a profile. */
    public static final int DEFAULT_SIZE = 4096;

    private final RecentResults<Key, DepthProfile> profiles;

    private record Key(SortedMap<Element, Double> massFractions, int emitter, Family family, double edgeKev,
                       double beamEnergyKev) {
    }

    public ProfileCache() {
        this(DEFAULT_SIZE);
    }

    public ProfileCache(int mostProfiles) {
        profiles = new RecentResults<>(mostProfiles);
    }

    /** The profile, from memory or worked out now. The density plays no part. */
    public DepthProfile profile(Material material, Line line, double beamEnergyKev) {
        Key key = new Key(material.massFractions(), line.element().atomicNumber(), line.family(), line.edgeEnergyKev(),
            beamEnergyKev);
        return profiles.get(key, () -> DepthProfile.of(material, line, beamEnergyKev));
    }

    /** How many profiles are held. */
    public int size() {
        return profiles.size();
    }
}
