package surfeit.segregation.nominal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static surfeit.segregation.InventedSpots.element;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.segregation.Interpreter;
import surfeit.segregation.InventedSpots;
import surfeit.segregation.answer.ElementFinding;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.answer.Outcome;
import surfeit.segregation.answer.Reason;
import surfeit.segregation.answer.Verdict;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Form;
import surfeit.spot.Judgement;
import surfeit.spot.ReferencePiece;
import surfeit.spot.Sample;
import surfeit.spot.Spot;
import surfeit.spot.SpotCentre;

/**
 * Where the calibration error is said to cancel wholly (a reference correlation of 1) and nothing tells the scatter of
 * one spot, a spot that reads as the reference piece has no uncertainty at all and no probability exists. All numbers are invented.
 */
class NothingUncertainTest {
    private static final Nominal NOMINAL = NominalText.parse("Ag:60,Cu:40", Basis.ATOMIC);

    @Test
    void one_spot_a_particle_is_judged_by_the_particles_and_shows_nothing_by_itself() {
        ElementFinding silver = silver(new InventedSpots().add("", "P1", "Ag 60.00, Cu 40.00")
            .add("", "P2", "Ag 62.31, Cu 37.69").add("", "P3", "Ag 61.49, Cu 38.51"));
        assertThat(silver.outcome().pValue()).isPresent();
        assertThat(silver.seenOn()).isEmpty();
    }

    @Test
    void a_single_spot_alone_is_inconclusive_and_its_interval_is_its_value() {
        Outcome silver = silver(new InventedSpots().add("", "P1", "Ag 60.00, Cu 40.00")).outcome();
        assertThat(silver.verdict()).isEqualTo(Verdict.INCONCLUSIVE);
        assertThat(silver.reason()).contains(Reason.NO_REPEAT_AND_NO_SIGMA);
        assertThat(silver.pValue()).isEmpty();
        assertThat(silver.low()).isCloseTo(0.6, within(1e-9));
        assertThat(silver.high()).isCloseTo(0.6, within(1e-9));
    }

    private static ElementFinding silver(InventedSpots specimen) {
        List<Spot> spots = new ArrayList<>(specimen.list());
        new InventedSpots().add("", "", "Ag 60, Cu 40").add("", "", "Ag 60, Cu 40").add("", "", "Ag 60, Cu 40").list()
            .forEach(spot -> spots.add(new Spot("R" + spot.label(), spot.particle(), spot.feature(), spot.session(),
                spot.acquiredTime(), spot.conditions(), Optional.of(new ReferencePiece(NOMINAL, true)), spot.basis(),
                spot.values())));
        Judgement judgement = new Judgement(1.25, 0.05, 1, 1, SpotCentre.MEAN);
        Sample sample = new Sample(Optional.empty(), Optional.of(NOMINAL), Set.of(), AccuracyClass.STANDARDLESS, Form.PARTICLE,
            Sample.Geometry.UNKNOWN, Optional.empty(), Optional.empty(), judgement, List.of(), List.of(), "", false);
        Interpretation answer = new Interpreter().interpret(sample, NOMINAL, SpotSource.of(spots), GroupBy.FEATURE,
            MethodSettings.DEFAULT_DETECTION_LIMIT_MASS_FRACTION);
        return element(answer.groups().get(0), "Ag");
    }
}
