package surfeit.segregation.uncertainty;

/**
 * The additive part of the shared error, per element, at a group's mean composition.
 *
 * <pre>
 *     f_j = a (sum_l C_l A_l / sum_l C_l) / A_j
 * </pre>
 * a a mass fraction (0.001 unless chosen otherwise), A atomic weights in g/mol, C the mean composition with negative
 * parts taken as zero; f_j an atomic fraction. It keeps the error of a vanishing element from vanishing with it.
 */
public interface AdditiveFloor {

    /** Fills in f_j per element at this composition. */
    void at(double[] mean, double[] floor);

    /** The same rule without one element. */
    AdditiveFloor without(int element);

    /** The rule for these atomic weights. */
    static AdditiveFloor ofMass(double massFraction, double[] atomicWeights) {
        return new AdditiveFloor() {
            @Override
            public void at(double[] mean, double[] floor) {
                double mass = 0;
                double sum = 0;
                for (int i = 0; i < mean.length; i++) {
                    double part = mean[i] > 0 ? mean[i] : 0;
                    mass += part * atomicWeights[i];
                    sum += part;
                }
                for (int i = 0; i < floor.length; i++) {
                    floor[i] = massFraction * mass / sum / atomicWeights[i];
                }
            }

            @Override
            public AdditiveFloor without(int element) {
                return ofMass(massFraction, GroupSums.drop(atomicWeights, element));
            }
        };
    }
}
