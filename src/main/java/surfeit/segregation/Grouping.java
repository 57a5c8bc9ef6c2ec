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
import java.util.function.Consumer;
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
    private static final int SESSIONS_AS_UNITS_FROM = 3;
    /** Grows when the sums are written in another order or hold something else. */
    private static final long SUMS_FORM = 4;

    private final SpotInHand hand;
    private final Sample sample;
    private final NominalFractions nominal;
    private final GroupBy by;
    private final References references;
    private final Map<GroupKey, GroupTally> tallies = new LinkedHashMap<>();
    private final Map<GroupKey, GroupData> groupOfKey = new HashMap<>();
    private final Set<String> particleNames = new LinkedHashSet<>();
    private final Set<String> sessionNames = new TreeSet<>();
    private final GroupKey.Sought sought;
    private Optional<GroupTally> last = Optional.empty();
    private long spotCount;
    private Optional<KeptSums> kept = Optional.empty();
    private Set<GroupKey> keptKeys = Set.of();
    private int particlesMax = Integer.MAX_VALUE;

    Grouping(Sample sample, NominalFractions nominal, GroupBy by, double defaultLimit, References references) {
        this(sample, nominal, by, defaultLimit, references, List.of());
    }

    /** The same, noting besides where the spots lie between the phases of their alloy. */
    Grouping(Sample sample, NominalFractions nominal, GroupBy by, double defaultLimit, References references,
             List<Phase> phases) {
        this(new SpotInHand(sample, nominal, defaultLimit, phases), by, references);
    }

    /** The same, beside others that add up the same spots in turn. */
    Grouping(SpotInHand hand, GroupBy by, References references) {
        this.hand = hand;
        this.sample = hand.sample();
        this.nominal = hand.nominal();
        this.by = by;
        this.references = references;
        this.sought = new GroupKey.Sought(sample, by);
    }

    /**
     * Reads the spots and gives the groups in the order of first appearance; it goes on from kept sums where there are
     * any and they were made from the same inputs.
     */
    List<GroupData> read(SpotSource source) {
        start(source, Integer.MAX_VALUE);
        kept.ifPresentOrElse(sums -> sums.forEachLater(this::add), () -> source.forEachSpecimen(this::add));
        return finish(source);
    }

    /**
     * Begins with kept sums or with nothing; then come the later spots or all, by {@link #add}, and {@link #finish}.
     *
     * @param mostParticles over more particles it gives up
     * @return the sums it goes on from
     */
    Optional<KeptSums> start(SpotSource source, int mostParticles) {
        particlesMax = mostParticles;
        kept = source.kept(by).filter(sums -> goesOnFrom(sums.bytes()));
        keptKeys = Set.copyOf(tallies.keySet());
        return kept;
    }

    /** Reads groups again that need it, and gives all in the order of first appearance. */
    List<GroupData> finish(SpotSource source) {
        last = Optional.empty();
        List<GroupMerge> merges = merges();
        Set<GroupKey> again = new LinkedHashSet<>();
        for (GroupMerge merge : merges) {
            again.addAll(merge.renew(tallies));
        }
        if (!again.isEmpty() && !isOverfull()) {
            Consumer<Spot> second = spot -> {
                GroupKey key = key(spot);
                if (again.contains(key)) {
                    tallies.get(key).add(spot, particle(spot));
                }
            };
            boolean laterOnly = kept.isPresent() && again.stream().noneMatch(keptKeys::contains);
            source.kept(by).filter(sums -> laterOnly).ifPresentOrElse(
                sums -> sums.forEachLater(second), () -> source.forEachSpecimen(second));
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
    GroupData groupOf(GroupKey.Sought spot) {
        return groupOfKey.get(spot);
    }

    private boolean goesOnFrom(byte[] kept) {
        try {
            readFrom(new SumsIn(kept));
            return true;
        } catch (SumsIn.UnfitException e) {
            last = Optional.empty();
            tallies.clear();
            particleNames.clear();
            sessionNames.clear();
            spotCount = 0;
            return false;
        }
    }

    /** Writes the sums of all spots read, to be gone on from later; the inputs they were made from stand in front. */
    void writeTo(SumsOut out) {
        out.count("form", SUMS_FORM);
        out.count("version of the method", MethodSettings.VERSION);
        out.text("grouped by", by.word());
        out.text("spot centre", sample.judgement().spotCentre().name());
        out.real("default limit", hand.defaultLimit());
        out.yesOrNo("spots are independent", sample.spotsIndependent());
        out.optionalReal("beam energy", sample.geometry().beamEnergyKev().stream().boxed().findFirst());
        out.elements(sample.excludedElements());
        out.elements(nominal.elements());
        out.count("spots", spotCount);
        out.texts("particle", particleNames);
        out.texts("session", sessionNames);
        out.count("groups", tallies.size());
        tallies.forEach((key, tally) -> {
            out.text("group", key.name());
            out.optionalReal("beam energy", key.beamEnergyKev());
            out.optionalText("session", key.session());
            tally.writeTo(out);
        });
    }

    /** @throws SumsIn.UnfitException where the inputs were others, or the program wrote sums in another form */
    private void readFrom(SumsIn in) {
        in.require("form", SUMS_FORM);
        in.require("version of the method", MethodSettings.VERSION);
        in.require("grouped by", by.word());
        in.require("spot centre", sample.judgement().spotCentre().name());
        in.require("default limit", hand.defaultLimit());
        in.require("spots are independent", sample.spotsIndependent());
        if (!in.optionalReal().equals(sample.geometry().beamEnergyKev().stream().boxed().findFirst())) {
            throw new SumsIn.UnfitException("beam energy");
        }
        in.requireElements(sample.excludedElements());
        in.requireElements(nominal.elements());
        spotCount = in.count();
        in.texts(particleNames);
        in.texts(sessionNames);
        for (long left = in.count(); left > 0; left--) {
            GroupKey key = new GroupKey(in.text(), in.optionalReal(), in.optionalText());
            tallies.put(key, GroupTally.readFrom(in, hand, references, key));
        }
        in.requireEnd();
    }

    void add(Spot spot) {
        if (isOverfull()) {
            return;
        }
        spotCount++;
        particleNames.add(particle(spot));
        sessionNames.add(spot.session().orElse(""));
        tally(spot).add(spot, particle(spot));
    }

    /** The tally a spot belongs to; mostly that of the spot before. */
    private GroupTally tally(Spot spot) {
        sought.of(spot);
        if (last.isEmpty() || !sought.equals(last.get().key())) {
            if (!tallies.containsKey(sought)) {
                GroupKey key = key(spot);
                tallies.put(key, GroupTally.startingWith(spot, hand, references, key));
            }
            last = Optional.of(tallies.get(sought));
        }
        return last.get();
    }

    private GroupKey key(Spot spot) {
        return GroupKey.of(spot, sample, by);
    }

    private String particle(Spot spot) {
        return GroupKey.particle(spot, sample);
    }

    /** A short note by which a later spot is seen that makes the sums of its group useless. */
    byte[] notes() {
        return GroupNotes.of(nominal, tallies);
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

    /** True where there are more particles than were to be read; the groups then are not whole. */
    boolean isOverfull() {
        return particleNames.size() > particlesMax;
    }

    boolean wentOn() {
        return kept.isPresent();
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
