package surfeit.lab;

import java.util.List;
import surfeit.composition.Nominal;

/**
 * An alloy of the catalogue.
 *
 * @param id      the name samples use, {@code ag-cu-eutectic}
 * @param name    its name in words
 * @param nominal the composition it should have
 * @param phases  phases it solidifies to, if stated
 * @param source  where the composition comes from
 */
public record Alloy(String id, String name, Nominal nominal, List<String> phases, String source) {
    public Alloy {
        phases = List.copyOf(phases);
    }
}
