package surfeit.rival;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import surfeit.composition.Basis;
import surfeit.composition.CompositionException;
import surfeit.composition.Nominal;
import surfeit.composition.NominalText;
import surfeit.element.Element;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.blocks.SpotSource;
import surfeit.spot.AccuracyClass;
import surfeit.spot.Coating;
import surfeit.spot.Conditions;
import surfeit.spot.Form;
import surfeit.spot.Judgement;
import surfeit.spot.Position;
import surfeit.spot.PreparationStep;
import surfeit.spot.ReportedValue;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

/**
 * Whatever a lab may send, described well or oddly, every cause can be weighed. Invented at random from a fixed seed.
 */
class AnySampleTest {
    private static final int SAMPLES = 1000;
    private static final List<String> NOMINALS = List.of("Ag:60,Cu:40", "Al:87.8,Si:12.2", "Bi:43,Sn:57",
        "Fe:bal,Cr:16-18,Ni:10-14,Mn:0-2", "Sn:99,Cu:1,Zn:0", "Al:90,Li:10", "Ti:bal,Al:5.5-6.75,O:0-0.2,N:0-0.05",
        "Cu:91,P:9", "C:30,W:70", "Ag:100,Cu:0");
    private static final List<String> WORDS = List.of("aluminium stub", "copper grid", "Messing", "hot silicone oil",
        "colloidal silica", "gold sputtered", "sputtered with copper", "HF", "tungsten carbide", "zapped", "", "SiC",
        "carbon tape");
    private static final List<String> COATINGS = List.of("C", "Au", "Cu", "Ag", "Cr", "Ar");
    private static final List<String> LINES = List.of("Ka", "La", "M", "?", "K series");

    private final Random random = new Random(20261124);

    @Test
    void every_sample_is_weighed_without_a_fault_and_every_factor_is_a_number() {
        Interpreter interpreter = new Interpreter();
        int weighed = 0;
        for (int i = 0; i < SAMPLES; i++) {
            Nominal nominal = NominalText.parse(NOMINALS.get(random.nextInt(NOMINALS.size())), Basis.ATOMIC);
            Sample sample = sample(nominal);
            List<Spot> spots = spots(nominal);
            for (GroupBy by : GroupBy.values()) {
                Optional<Interpretation> answer = answer(interpreter, sample, nominal, spots, by);
                List<Rival> rivals = answer.stream().flatMap(one -> one.groups().stream())
                    .flatMap(group -> group.rivals().stream()).toList();
                rivals.forEach(AnySampleTest::check);
                weighed += rivals.size();
            }
        }
        assertThat(weighed).isGreaterThan(SAMPLES);
    }

    private static Optional<Interpretation> answer(Interpreter interpreter, Sample sample, Nominal nominal,
                                                  List<Spot> spots, GroupBy by) {
        try {
            return Optional.of(interpreter.interpret(sample, nominal, SpotSource.of(spots), by, 0.003));
        } catch (CompositionException tooFewElements) {
            return Optional.empty();
        }
    }

    private static void check(Rival rival) {
        assertThat(rival.largestFactor().orElse(1)).isFinite().isNotNegative();
        assertThat(rival.cause() + rival.assumes()).doesNotContain("NaN").doesNotContain("Infinity")
            .doesNotContain("Optional");
    }

    private Sample sample(Nominal nominal) {
        List<PreparationStep> steps = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            steps.add(new PreparationStep(word(), sometimes(word())));
        }
        Sample.Geometry geometry = new Sample.Geometry(maybe(0.3, 60), maybe(1, 90), maybe(50, 400), maybe(1e-4, 200));
        Optional<Coating> coating = sometimes(new Coating(Element.of(pick(COATINGS)), maybe(0.1, 1e4)));
        Set<Element> excluded = random.nextBoolean() ? Set.of() : Set.of(Element.of("C"), Element.of("O"));
        return new Sample(Optional.empty(), Optional.of(nominal), excluded, pick(List.of(AccuracyClass.values())),
            pick(List.of(Form.values())), geometry, coating, sometimes(word()), Judgement.DEFAULT, steps, List.of(), "",
            random.nextBoolean());
    }

    private List<Spot> spots(Nominal nominal) {
        List<Spot> spots = new ArrayList<>();
        int groups = 1 + random.nextInt(3);
        for (int g = 0; g < groups; g++) {
            double shift = random.nextGaussian() * 0.5;
            boolean described = random.nextBoolean();
            for (int s = 1 + random.nextInt(5); s > 0; s--) {
                spots.add(new Spot("s" + spots.size(), sometimes("P" + random.nextInt(4)), sometimes("feature " + g),
                    Optional.of("run " + random.nextInt(2)), Optional.empty(),
                    described ? conditions() : Conditions.UNKNOWN, Optional.empty(), pick(List.of(Basis.values())),
                    values(nominal, shift)));
            }
        }
        return spots;
    }

    private Conditions conditions() {
        return new Conditions(maybe(1, 40), OptionalDouble.empty(), maybe(1e-3, 50), maybe(0.4, 1.2),
            sometimes(pick(List.of(Position.values()))), maybe(-90, 90));
    }

    private Map<Element, ReportedValue> values(Nominal nominal, double shift) {
        Map<Element, ReportedValue> values = new LinkedHashMap<>();
        double[] middles = nominal.resolve().middles();
        for (int i = 0; i < middles.length; i++) {
            double moved = i == 0 ? 0 : shift + 0.02 * random.nextGaussian();
            values.put(nominal.elements().get(i), value(middles[i] * Math.exp(moved)));
        }
        for (String symbol : List.of("C", "O", "S", "Si", "W", "Cl")) {
            if (random.nextInt(4) == 0) {
                values.putIfAbsent(Element.of(symbol), value(0.1 * random.nextDouble()));
            }
        }
        return values;
    }

    private ReportedValue value(double fraction) {
        return switch (random.nextInt(12)) {
            case 0 -> new ReportedValue.NotReported();
            case 1 -> new ReportedValue.NotDetected(maybe(0.002, 0.003), "n.d.");
            case 2 -> new ReportedValue.BelowLimit(0.003, "<0.3");
            case 3 -> ReportedValue.Measured.of(random.nextBoolean() ? 0 : -0.001, "0");
            case 4 -> new ReportedValue.Measured(fraction, "1.00", OptionalDouble.of(0.002), Optional.empty(),
                OptionalDouble.empty(), Optional.of(pick(LINES)));
            default -> ReportedValue.Measured.of(fraction, "1.00");
        };
    }

    private String word() {
        return pick(WORDS);
    }

    private OptionalDouble maybe(double low, double high) {
        double value = low + (high - low) * Math.pow(random.nextDouble(), 2);
        return random.nextInt(3) == 0 ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private <T> Optional<T> sometimes(T value) {
        return Optional.of(value).filter(one -> random.nextBoolean());
    }

    private <T> T pick(List<T> all) {
        return all.get(random.nextInt(all.size()));
    }
}
