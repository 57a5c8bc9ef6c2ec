package surfeit.intake;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.Predicate;
import surfeit.spot.Spot;

/**
 * Counts the spots that say no particle, feature, session or beam energy in a table that says some: cells merged over
 * several spots leave it so, and then the spots would be without in silence. Spots on a reference piece are of no particle
 * and feature anyway. Not thread-safe: one per table.
 */
final class BlankFields {
    private static final Map<SpotField, Predicate<Spot>> FIELDS = new EnumMap<>(Map.of(
        SpotField.PARTICLE, spot -> spot.isReference() || spot.particle().isPresent(),
        SpotField.FEATURE, spot -> spot.isReference() || spot.feature().isPresent(),
        SpotField.SESSION, spot -> spot.session().isPresent(),
        SpotField.BEAM_ENERGY_KEV, spot -> spot.conditions().beamEnergyKev().isPresent()));

    private final Map<SpotField, Long> blanks = new EnumMap<>(SpotField.class);
    private long spots;
    private long references;

    void count(Spot spot) {
        spots++;
        references += spot.isReference() ? 1 : 0;
        FIELDS.forEach((field, isKnown) -> {
            if (!isKnown.test(spot)) {
                blanks.merge(field, 1L, Long::sum);
            }
        });
    }

    /** Tells of each field that some spots name and others do not. */
    void tell(HeaderCells cells, TableHeader header, SpotIntake intake) {
        for (SpotField field : FIELDS.keySet()) {
            boolean ofSpecimen = field == SpotField.PARTICLE || field == SpotField.FEATURE;
            long asked = ofSpecimen ? spots - references : spots;
            long blank = blanks.getOrDefault(field, 0L);
            if (header.column(field) >= 0 && blank > 0 && blank < asked) {
                intake.leaveOut(cells.leftOut(header.column(field), "blank for " + blank + " of " + asked
                    + " spots, which then name no " + field.text() + "; fill merged cells in"));
            }
        }
    }
}
