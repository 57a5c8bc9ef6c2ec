package surfeit.segregation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import surfeit.composition.NominalFractions;
import surfeit.composition.Phase;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/**
 * Puts the spots of a sample into groups in one pass, and in a second one only for groups that need it.
 *
 * <p>A group never mixes beam energies. Sessions are mixed only where there are three or more: then the session is the
 * unit that repeats; otherwise each session is a group. Spots without a particle are together one particle, unless the
 * sample says that its spots are independent.
 */
final class Grouping {
    static final String UNLABELLED = "unlabelled";
    static final String UNNAMED_PARTICLE = "unnamed particle";
    private static final String ALL_SPOTS = "all spots";
    private static final int SESSIONS_AS_UNITS_FROM = 3;

    private final Sample sample;
    private final NominalFractions nominal;
    private final GroupBy by;
    private final double defaultLimit;
    private final References references;
    private final Map<GroupKey, GroupTally> tallies = new LinkedHashMap<>();
    private final Map<GroupKey, GroupData> groupOfKey = new HashMap<>();
    private final Set<String> particleNames = new LinkedHashSet<>();
    private final Set<String> sessionNames = new TreeSet<>();
    private final PhaseTally.Source phases;
    private long spotCount;

    Grouping(Sample sample, NominalFractions nominal, GroupBy by, double defaultLimit, References references) {
        this(sample, nominal, by, defaultLimit, references, List.of());
    }

    /** The same, noting besides where the spots lie between the phases of their alloy. */
    Grouping(Sample sample, NominalFractions nominal, GroupBy by, double defaultLimit, References references,
             List<Phase> phases) {
        this.sample = sample;
        this.nominal = nominal;
        this.by = by;
        this.defaultLimit = defaultLimit;
        this.references = references;
        this.phases = new PhaseTally.Source(phases, nominal);
    }

    /** Reads the spots and gives the groups in the order of first appearance. */
    List<GroupData> read(SpotSource source) {
        source.forEachSpecimen(this::first);
        List<GroupMerge> merges = merges();
        Set<GroupKey> again = new LinkedHashSet<>();
        for (GroupMerge merge : merges) {
            again.addAll(merge.renew(tallies));
        }
        if (!again.isEmpty()) {
            source.forEachSpecimen(spot -> {
                GroupKey key = key(spot);
                if (again.contains(key)) {
                    tallies.get(key).add(spot, particle(spot));
                }
            });
        }
        List<GroupData> groups = new ArrayList<>();
        for (GroupMerge merge : merges) {
            GroupData data = merge.data(tallies, nominal);
            groups.add(data);
            merge.keys().forEach(key -> groupOfKey.put(key, data));
        }
        return groups;
    }

    /** The group a spot of the specimen was put into; asked after reading. */
    GroupData groupOf(Spot spot) {
        return groupOfKey.get(key(spot));
    }

    private void first(Spot spot) {
        spotCount++;
        particleNames.add(particle(spot));
        sessionNames.add(spot.session().orElse(""));
        tallies.computeIfAbsent(key(spot), key ->
            GroupTally.startingWith(spot, nominal, sample, references, key, defaultLimit, phases)).add(spot, particle(spot));
    }

    private GroupKey key(Spot spot) {
        String name = by == GroupBy.FEATURE ? spot.feature().orElse(UNLABELLED)
            : by == GroupBy.PARTICLE ? particle(spot) : ALL_SPOTS;
        Optional<Double> energy = spot.conditions().beamEnergyKev().isPresent()
            ? Optional.of(spot.conditions().beamEnergyKev().getAsDouble())
            : sample.geometry().beamEnergyKev().stream().boxed().findFirst();
        return new GroupKey(name, energy, spot.session());
    }

    private String particle(Spot spot) {
        return spot.particle().orElse(sample.spotsIndependent() ? spot.label() : UNNAMED_PARTICLE);
    }

    private List<GroupMerge> merges() {
        Map<String, Map<Optional<Double>, List<GroupKey>>> byName = new LinkedHashMap<>();
        for (GroupKey key : tallies.keySet()) {
            byName.computeIfAbsent(key.name(), name -> new LinkedHashMap<>())
                .computeIfAbsent(key.beamEnergyKev(), energy -> new ArrayList<>()).add(key);
        }
        List<GroupMerge> merges = new ArrayList<>();
        byName.forEach((name, byEnergy) -> byEnergy.forEach((energy, keys) -> {
            String atEnergy = byEnergy.size() == 1 ? name : name + energyWords(energy);
            if (keys.size() >= SESSIONS_AS_UNITS_FROM) {
                merges.add(new GroupMerge(atEnergy, keys));
            } else {
                for (GroupKey key : keys) {
                    String session = keys.size() == 1 ? "" : key.session().map(s -> ", session " + s).orElse(", no session");
                    merges.add(new GroupMerge(atEnergy + session, List.of(key)));
                }
            }
        }));
        return merges;
    }

    private static String energyWords(Optional<Double> energy) {
        return energy.map(kev -> " @ " + (kev == Math.rint(kev) ? String.format(Locale.ROOT, "%.0f", kev) : kev.toString())
            + " keV").orElse(" @ unstated beam energy");
    }

    long spotCount() {
        return spotCount;
    }

    int particleCount() {
        return particleNames.size();
    }

    int sessionCount() {
        return sessionNames.size();
    }
}
