package surfeit.segregation;

import java.util.List;
import surfeit.spot.Sample;

/** x */
final class Contrasts {
    private Contrasts() {
    }

    static List<Contrast> of(List<GroupAnalysis> analyses, Sample sample, MethodSettings settings) {
        return List.of();
    }
}
