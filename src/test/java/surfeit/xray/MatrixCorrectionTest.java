package surfeit.xray;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import surfeit.element.Element;

/** Compositions drawn at random: what a homogeneous material emits is to be read as that material, whatever the start. */
class MatrixCorrectionTest {
    private static final List<String> SYMBOLS = List.of("C", "O", "F", "Na", "Mg", "Al", "Si", "S", "Cl", "Ti", "Cr", "Fe", "Ni",
        "Cu", "Zn", "Ag", "Sn", "W", "Au", "Bi");
    private static final double TAKE_OFF_DEG = 35;

    @Test
    void a_homogeneous_material_is_read_as_what_it_is() {
        Random random = new Random(20261130);
        int read = 0;
        for (int i = 0; i < 4000; i++) {
            double beam = 3 + 27 * random.nextDouble();
            Map<Element, Double> parts = new TreeMap<>();
            double sum = 0;
            int count = 2 + random.nextInt(4);
            while (parts.size() < count) {
                double part = -Math.log(random.nextDouble());
                if (parts.putIfAbsent(Element.of(SYMBOLS.get(random.nextInt(SYMBOLS.size()))), part) == null) {
                    sum += part;
                }
            }
            double all = sum;
            parts.replaceAll((element, part) -> part / all);
            if (parts.keySet().stream().anyMatch(element -> LineChoice.at(element, beam).chosen().isEmpty())) {
                continue;
            }
            read++;
            Material material = Material.of(parts, 1);
            List<Line> lines = new ArrayList<>();
            parts.keySet().forEach(element -> lines.add(LineChoice.at(element, beam).chosen().orElseThrow()));
            double[] intensities = new double[lines.size()];
            double[] first = new double[lines.size()];
            for (int j = 0; j < first.length; j++) {
                Line line = lines.get(j);
                intensities[j] = material.massFraction(line.element()) * DepthProfile.of(material, line, beam)
                    .emitted(Absorption.chi(line, material, TAKE_OFF_DEG));
                first[j] = 1.0 / first.length;
            }

            double[] found = new MatrixCorrection(lines, beam, TAKE_OFF_DEG).read(intensities, first);

            for (int j = 0; j < first.length; j++) {
                assertThat(found[j]).as("%s of %s at %.1f keV", lines.get(j), parts, beam)
                    .isCloseTo(material.massFraction(lines.get(j).element()), within(1e-8));
            }
        }
        assertThat(read).isGreaterThan(2000);
    }
}
