package surfeit.segregation.phase;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import surfeit.composition.Phase;
import surfeit.segregation.answer.DiffractionMismatch;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.PhaseReading;

/**
 * Holds the phases that groups of spots show against those stated as found by diffraction.
 *
 * <p>A group shows the phase it fits, both phases its spots fall on, or both ends of the mixture it would be. Depths
 * and amounts in the reasons: laboratory X-ray diffraction sees some micrometres to some tens of them and needs about 1
 * to 5 % of the mass (from memory).
 */
public final class DiffractionCheck {
    private static final String BROAD = "amorphous, or crystals so fine that their peaks are too broad to be seen";
    private static final String LITTLE = "too little of it: diffraction needs about 1 to 5 % of the mass";
    private static final String SURFACE = "only at the surface: spots read at most the outermost few micrometres, "
        + "diffraction averages over some to some tens of micrometres";
    private static final String ALIKE = "the spots show it only as part of a mixture, and one homogeneous phase of "
        + "that composition would read alike";

    private final List<Phase> phases;
    private final List<GroupFinding> groups;

    private DiffractionCheck(List<Phase> phases, List<GroupFinding> groups) {
        this.phases = phases;
        this.groups = groups.stream().filter(group -> group.phaseReading().isPresent()).toList();
    }

    /** The mismatches; none where no diffraction phases were stated or no group could be read against phases. */
    public static List<DiffractionMismatch> of(List<String> stated, List<Phase> phases, List<GroupFinding> findings) {
        DiffractionCheck check = new DiffractionCheck(phases, findings);
        return stated.isEmpty() || check.groups.isEmpty() ? List.of() : check.mismatches(stated);
    }

    private List<DiffractionMismatch> mismatches(List<String> stated) {
        List<DiffractionMismatch> found = new ArrayList<>();
        Map<String, List<PhaseReading>> shown = new LinkedHashMap<>();
        groups.forEach(group -> shown(reading(group)).forEach(name ->
            shown.computeIfAbsent(name, key -> new ArrayList<>()).add(reading(group))));
        Set<String> statedNames = new LinkedHashSet<>();
        for (String name : stated) {
            List<Phase> meant = PhaseNames.meant(name, phases);
            meant.forEach(phase -> statedNames.add(phase.name()));
            if (meant.isEmpty()) {
                found.add(new DiffractionMismatch(name, DiffractionMismatch.Kind.NOT_A_KNOWN_PHASE, List.of(),
                    List.of("it is none of the phases known of this alloy (" + String.join(", ", names())
                        + "); add it to the alloy with its composition, and spots are compared with it")));
            } else if (meant.stream().noneMatch(phase -> shown.containsKey(phase.name()))) {
                found.add(diffractionOnly(meant.get(0).name()));
            }
        }
        shown.forEach((name, readings) -> {
            if (!statedNames.contains(name)) {
                found.add(spotsOnly(name, readings));
            }
        });
        return List.copyOf(found);
    }

    private static PhaseReading reading(GroupFinding group) {
        return group.phaseReading().orElseThrow();
    }

    private Set<String> names() {
        Set<String> names = new LinkedHashSet<>();
        phases.forEach(phase -> names.add(phase.name()));
        return names;
    }

    private static List<String> shown(PhaseReading reading) {
        return switch (reading.kind()) {
            case ONE_PHASE -> reading.fitting();
            case MIXTURE, ONE_OR_THE_OTHER -> Stream.concat(
                reading.tieLine().stream().flatMap(line -> Stream.of(line.from(), line.to())),
                reading.ofThree().stream().map(PhaseReading.MassShare::phase)).map(Phase::name).toList();
            case NEITHER, CANNOT_TELL -> List.of();
        };
    }

    private DiffractionMismatch spotsOnly(String name, List<PhaseReading> readings) {
        List<String> reasons = new ArrayList<>(List.of(BROAD, little(name), SURFACE));
        if (readings.stream().allMatch(reading -> reading.kind() == PhaseReading.Kind.MIXTURE)) {
            reasons.add(ALIKE);
        }
        return new DiffractionMismatch(name, DiffractionMismatch.Kind.SPOTS_ONLY, groups.stream()
            .filter(group -> shown(reading(group)).contains(name)).map(GroupFinding::name).toList(), reasons);
    }

    private String little(String name) {
        return groups.stream().flatMap(group -> reading(group).tieLine().stream())
            .filter(line -> line.nominal().isPresent() && (line.from().name().equals(name)
            || line.to().name().equals(name)))
            .findFirst().map(line -> {
                double second = line.nominal().orElseThrow().ofMass();
                return LITTLE + " (an alloy of nominal composition would hold "
                    + PhaseWords.percent(line.to().name().equals(name) ? second : 1 - second) + " %)";
            }).orElse(LITTLE);
    }

    private DiffractionMismatch diffractionOnly(String name) {
        List<String> maybe = groups.stream().filter(group -> reading(group).kind() == PhaseReading.Kind.CANNOT_TELL
            && reading(group).phases().stream().anyMatch(fit -> fit.fits() && fit.phase().name().equals(name)))
            .map(GroupFinding::name).toList();
        List<String> reasons = new ArrayList<>();
        if (!maybe.isEmpty()) {
            reasons.add("the spots of \"" + String.join("\", \"", maybe)
                + "\" may be it; their uncertainty does not tell");
        }
        reasons.add("no spot was placed on it");
        reasons.add("inside the particles, where spots at the surface do not reach");
        reasons.add("finer than the X-ray source, so that every spot averages it with its surroundings");
        return new DiffractionMismatch(name, DiffractionMismatch.Kind.DIFFRACTION_ONLY, maybe, reasons);
    }
}
