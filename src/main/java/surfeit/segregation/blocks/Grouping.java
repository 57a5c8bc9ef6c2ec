package surfeit.segregation.blocks;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import surfeit.composition.NominalFractions;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.sums.GroupData;
import surfeit.segregation.sums.GroupKey;
import surfeit.segregation.sums.GroupMerge;
import surfeit.segregation.sums.GroupTally;
import surfeit.segregation.sums.References;
import surfeit.segregation.sums.SpotInHand;

/**
 * Puts the spots of a sample into groups in one pass, and in a second one only where a group needs it.
 *
 * <p>A group never mixes beam energies. Sessions are mixed only where there are three or more: then the session is the
 * unit that repeats; otherwise each session is a group. Spots without a particle are together one particle, unless the
 * sample says that its spots are independent.
 */
public final class Grouping {
    private static final int SESSIONS_AS_UNITS_FROM = 3;

    /** Which spots the blocks still lack. */
    enum Rest {
        ALL,
        /** Those that came after the kept sums. */
        LATER,
        NONE
    }

    private final NominalFractions nominal;
    private final GroupBy by;
    private final BlockSums each;
    private final SpotBlocks blocks;
    private final Map<GroupKey, GroupData> groupOfKey = new HashMap<>();
    private Optional<KeptSums> kept = Optional.empty();
    private Rest rest = Rest.ALL;
    private boolean wentOn;
    private Set<GroupKey> keptKeys = Set.of();

    /** @param source the spots, of which an answer is to be made */
    public Grouping(SpotInHand hand, GroupBy by, References references, SpotSource source) {
        this(hand, by, references, source, Integer.MAX_VALUE, BlockSums.UNUSED);
    }

    /**
     * The same, for the sake of the sums.
     *
     * @param mostParticles over more particles it gives up
     * @param each          is told the sums of each full block
     */
    Grouping(SpotInHand hand, GroupBy by, References references, SpotSource source, int mostParticles, BlockSums each) {
        this.nominal = hand.nominal();
        this.by = by;
        this.each = each;
        this.blocks = new SpotBlocks(new SumsInputs(hand, by, source.placesInBlock()), references, mostParticles, each);
    }

    /**
     * Reads the spots and gives the groups in the order of first appearance; it goes on from kept sums where there are
     * any and they were made from the same inputs.
     */
    public List<GroupData> read(SpotSource source) {
        start(source);
        readRest(source);
        if (startAgain(source)) {
            readRest(source);
        }
        List<GroupMerge> merges = merges();
        Map<GroupKey, GroupTally> tallies = blocks.together();
        List<GroupData> groups = new ArrayList<>();
        for (GroupMerge merge : merges) {
            GroupData data = merge.data(tallies, nominal);
            groups.add(data);
            merge.keys().forEach(key -> groupOfKey.put(key, data));
        }
        return groups;
    }

    private void readRest(SpotSource source) {
        kept.ifPresentOrElse(sums -> sums.forEachLater(blocks), () -> source.forEachPlace(blocks));
    }

    /**
     * Begins with kept sums or with nothing; then the {@linkplain #blocks() blocks} are given the {@linkplain #rest() rest}
     * of the spots, and once more all of them where it {@linkplain #startAgain must start again}.
     */
    void start(SpotSource source) {
        Optional<KeptSums> found = source.kept(by);
        kept = found.filter(blocks::goesOnFrom);
        rest = kept.isPresent() ? Rest.LATER : Rest.ALL;
        wentOn = kept.isPresent();
        keptKeys = Set.copyOf(blocks.keys());
        if (kept.isEmpty()) {
            found.ifPresent(unfit -> blocks.clear(GroupNotes.closings(unfit.notes(), nominal)));
        }
    }

    /** Begins with nothing, but knows from kept sums by what the groups are closed: it need hardly read a spot twice. */
    void startKnowing(KeptSums sums) {
        if (blocks.goesOnFrom(sums)) {
            blocks.clear(blocks.closings());
        }
    }

    /**
     * Begins with kept sums of which one spot may be no more as it was: reads the block again that it lies in, and all
     * later spots, or leaves all spots to be read where that is not enough.
     *
     * @param place the spot's
     */
    void startChanged(SpotSource source, long place) {
        start(source);
        if (kept.isEmpty() || place > kept.get().mark()) {
            return;
        }
        Map<GroupKey, GroupTally.Closing> known = blocks.closings();
        if (blocks.renew(kept.get(), place)) {
            known = shown(merges());
            if (blocks.isOverfull() || again(known).isEmpty()) {
                rest = Rest.NONE;
                return;
            }
        }
        startAll(known);
    }

    private void startAll(Map<GroupKey, GroupTally.Closing> known) {
        each.again();
        blocks.clear(known);
        kept = Optional.empty();
        rest = Rest.ALL;
    }

    /** Whether the rest is to be read once more, because a group showed later what it did not show first. */
    boolean startAgain(SpotSource source) {
        Map<GroupKey, GroupTally.Closing> shown = shown(merges());
        List<GroupKey> again = again(shown);
        if (again.isEmpty() || blocks.isOverfull()) {
            rest = Rest.NONE;
            return false;
        }
        boolean laterOnly = kept.isPresent() && again.stream().noneMatch(keptKeys::contains);
        startAll(shown);
        kept = source.kept(by).filter(sums -> laterOnly && blocks.goesOnFrom(sums));
        rest = kept.isPresent() ? Rest.LATER : Rest.ALL;
        return true;
    }

    /** Which spots the blocks are to be given before anything is asked of them. */
    Rest rest() {
        return rest;
    }

    /** The kept sums that it goes on from. */
    Optional<KeptSums> kept() {
        return kept;
    }

    private List<GroupKey> again(Map<GroupKey, GroupTally.Closing> shown) {
        List<GroupKey> again = new ArrayList<>();
        shown.forEach((key, all) -> {
            if (blocks.mustReadAgain(key, all)) {
                again.add(key);
            }
        });
        return again;
    }

    /** What the spots of each group show, together with those of the groups it is merged with. */
    private Map<GroupKey, GroupTally.Closing> shown(List<GroupMerge> merges) {
        Map<GroupKey, GroupTally.Closing> shown = new LinkedHashMap<>();
        for (GroupMerge merge : merges) {
            GroupTally.Closing all = blocks.shown(merge.keys().get(0));
            for (GroupKey key : merge.keys().subList(1, merge.keys().size())) {
                all = all.and(blocks.shown(key));
            }
            for (GroupKey key : merge.keys()) {
                shown.put(key, all);
            }
        }
        return shown;
    }

    /** The group a spot of the specimen was put into; asked after reading. */
    public GroupData groupOf(GroupKey.Sought spot) {
        return groupOfKey.get(spot);
    }

    /** The sums of the spots, and where further ones go. */
    public SpotBlocks blocks() {
        return blocks;
    }

    /** A short note by which a later spot is seen that makes the sums of its group useless. */
    byte[] notes() {
        return GroupNotes.of(nominal, blocks.closings());
    }

    /** True where there were kept sums to go on from. */
    boolean wentOn() {
        return wentOn;
    }

    /** True where every spot was read. */
    boolean isAnew() {
        return kept.isEmpty();
    }

    /** How the groups are put together, in the order of first appearance. */
    private List<GroupMerge> merges() {
        Map<String, Map<Optional<Double>, List<GroupKey>>> byName = new LinkedHashMap<>();
        for (GroupKey key : blocks.keys()) {
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
}
