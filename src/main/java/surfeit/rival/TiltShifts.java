package surfeit.rival;

import java.util.Optional;
import surfeit.xray.Line;
import surfeit.xray.TiltEffect;
import surfeit.xray.TiltRange;

/**
 * How far local tilt can move the log odds of every element, down and up, over a range of take-off angles.
 *
 * <pre>   up_i = -ln( sum_{j!=i} (c_j / high_ij) / sum_{j!=i} c_j )      down_i with low_ij </pre>
 *
 * c nominal fractions, low_ij and high_ij the ends of the ratio of line i to line j ({@link TiltEffect}, model error
 * included). The ends of several pairs need not fall on one angle, so with three and more elements these are bounds.
 * An element without a usable line counts as untouched. Not changed after it was made.
 */
record TiltShifts(double[] down, double[] up) {

    static TiltShifts of(GroupPhysics physics, TiltRange range) {
        int n = physics.elements().size();
        double[] fractions = physics.nominal();
        double[] down = new double[n];
        double[] up = new double[n];
        for (int i = 0; i < n; i++) {
            double all = 0;
            double least = 0;
            double most = 0;
            for (int j = 0; j < n; j++) {
                if (j != i) {
                    double[] ends = ratio(physics, i, j, range);
                    all += fractions[j];
                    least += fractions[j] / ends[0];
                    most += fractions[j] / ends[1];
                }
            }
            down[i] = Math.log(all / least);
            up[i] = Math.log(all / most);
        }
        return new TiltShifts(down, up);
    }

    private static double[] ratio(GroupPhysics physics, int i, int j, TiltRange range) {
        Optional<Line> first = physics.signal(i).map(LineSignal::line);
        Optional<Line> second = physics.signal(j).map(LineSignal::line);
        if (first.isEmpty() || second.isEmpty()) {
            return new double[] {1, 1};
        }
        TiltEffect effect = TiltEffect.of(physics.material(), first.get(), second.get(), physics.beamEnergyKev(), range,
            physics.profiles());
        return new double[] {effect.lowFactor(), effect.highFactor()};
    }

    double reach(Shift shift) {
        return shift.up() ? up[shift.index()] : -down[shift.index()];
    }
}
