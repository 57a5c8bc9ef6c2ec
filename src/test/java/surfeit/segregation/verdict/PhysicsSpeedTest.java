package surfeit.segregation.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import surfeit.composition.AlloyCatalogue;
import surfeit.composition.Nominal;
import surfeit.composition.Phase;
import surfeit.element.Element;
import surfeit.http.AnswerFile;
import surfeit.http.AskedSample;
import surfeit.http.FileQuestion;
import surfeit.intake.IntakeLimits;
import surfeit.lab.Segregation;
import surfeit.preparation.Handling;
import surfeit.rival.Rivals;
import surfeit.segregation.Interpreter;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.blocks.SpotSource;
import surfeit.segregation.depth.DepthReader;
import surfeit.segregation.depth.SkinBalance;
import surfeit.segregation.nominal.GroupAnalysis;
import surfeit.segregation.nominal.SampleReading;
import surfeit.segregation.phase.DiffractionCheck;
import surfeit.segregation.phase.PhaseReader;
import surfeit.segregation.sums.ClosedNominal;
import surfeit.spot.Sample;
import surfeit.xray.DepthProfile;
import surfeit.xray.Line;
import surfeit.xray.LineTable;
import surfeit.xray.Material;
import surfeit.xray.ProfileCache;

/**
 * What the physics adds to an interpretation whose alloy, beam energy and geometry have been seen (wanted: at most 20 %
 * of the rest of the request that asks for it), and what one depth profile costs (wanted: under 50 us); printed, since a
 * figure is no verdict.
 */
@Tag("bench")
class PhysicsSpeedTest {
    private static final Path SAMPLES = Path.of("sample-spectra-results");
    private static final double LIMIT = MethodSettings.DEFAULT_DETECTION_LIMIT_MASS_FRACTION;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    /** The compiler is done with every part then. */
    private static final int WARM_UP = 25_000;
    private static final int ROUNDS = 15;
    private static final int REPEATS = 100;

    /** Five spots of four elements, invented; at least three systems of phases. */
    private static final String QUATERNARY = "label,particle,feature,Ag at%,Cu at%,Zn at%,Sn at%\n"
        + "1,P1,matrix,55.8,22.3,16.8,5.1\n2,P2,matrix,54.9,23.1,17.0,5.0\n3,P3,matrix,56.6,21.2,17.3,4.9\n"
        + "4,P4,matrix,55.2,22.8,16.9,5.1\n5,P5,matrix,56.1,21.9,17.1,4.9\n";

    private static final String QUATERNARY_SAMPLE = "{\"nominal\": {\"unit\": \"at%\", \"elements\": "
        + "{\"Ag\": 56, \"Cu\": 22, \"Zn\": 17, \"Sn\": 5}}}";

    /** One sample with everything that its physics is worked out from. */
    private record Case(FileQuestion question, Nominal nominal, List<Phase> phases, byte[] described, byte[] table) {
        static Case of(String file, String described) throws IOException {
            return of(SAMPLES.resolve(file), described.isEmpty() ? new byte[0] : Files.readAllBytes(SAMPLES.resolve(described)));
        }

        static Case of(Path file, byte[] described) throws IOException {
            FileQuestion question = FileQuestion.read(file, Map.of(), described.length == 0
                ? Optional.empty() : Optional.of(described), IntakeLimits.DEFAULT);
            Nominal nominal = question.sample().nominal().orElseGet(() ->
                AlloyCatalogue.packaged().require(question.sample().alloy().orElseThrow()).nominal());
            return new Case(question, nominal, AlloyCatalogue.packaged().phasesOf(nominal), described, Files.readAllBytes(file));
        }

        SampleReading reading(List<Phase> known) {
            return SampleReading.of(question.sample(), ClosedNominal.of(nominal, question.sample()), known,
                SpotSource.of(question.spots()), GroupBy.FEATURE, LIMIT);
        }

        Interpretation interpretation() {
            return new Interpreter().interpret(question.sample(), nominal, phases, SpotSource.of(question.spots()),
                GroupBy.FEATURE, LIMIT);
        }
    }

    @ParameterizedTest
    @CsvSource({"ag-cu-braze-powder.csv, ag-cu-braze-powder.sample.json",
        "sn-bi-solder-spheres.csv, sn-bi-solder-spheres.sample.json", "al-si-powder.json, ''",
        "al-si-patch-oil.json, ''"})
    void what_the_physics_adds_to_an_interpretation(String file, String described) throws IOException {
        print(file, Case.of(file, described));
    }

    @Test
    void what_the_physics_adds_to_five_spots_of_four_elements(@TempDir Path folder) throws IOException {
        Path table = Files.writeString(folder.resolve("quaternary.csv"), QUATERNARY);
        print("5 spots x 4 elements", Case.of(table, QUATERNARY_SAMPLE.getBytes(StandardCharsets.UTF_8)));
    }

    private static void print(String file, Case one) throws IOException {
        Interpretation answer = one.interpretation();
        SampleReading reading = one.reading(one.phases());
        Map<String, Supplier<Object>> parts = new LinkedHashMap<>();
        parts.put("all", one::interpretation);
        parts.put("write", () -> written(answer));
        parts.put("write without", () -> written(withoutPhysics(answer)));
        parts.put("strip", () -> withoutPhysics(answer));
        parts.put("find phases", () -> AlloyCatalogue.packaged().phasesOf(one.nominal()));
        parts.put("read with phases", () -> one.reading(one.phases()));
        parts.put("read without", () -> one.reading(List.of()));
        physics(parts, answer, reading, one.nominal());
        Map<String, Double> us = least(parts);
        double tally = us.get("read with phases") - us.get("read without");
        double physics = tally + us.get("rivals") + us.get("phases") + us.get("skin") + us.get("depth")
            + us.get("diffraction");
        double words = us.get("write") - us.get("write without") + us.get("strip");
        double answered = us.get("all") + us.get("write");
        double request = request(one);
        System.out.printf(Locale.ROOT, "physics: %s: %.0f %% on top of the rest of a request (%.1f of %.0f us); of working "
            + "it out and writing it as JSON %.0f %%, of working it out alone %.0f %% (%.1f of %.1f us)%n", file,
            100 * (physics + words) / (request - physics - words), physics + words, request,
            100 * (physics + words) / (answered - physics - words), 100 * physics / (us.get("all") - physics), physics,
            us.get("all"));
        System.out.printf(Locale.ROOT, "physics:   rivals %.1f, phases %.1f and %.1f, to find them %.1f, skin %.1f, "
            + "depth %.1f, diffraction %.1f us; of writing %.1f of %.1f us%n", us.get("rivals"), tally, us.get("phases"),
            us.get("find phases"),
            us.get("skin"), us.get("depth"), us.get("diffraction"), words, us.get("write"));
        assertThat(one.interpretation().groups()).isEqualTo(answer.groups());
    }

    private static double request(Case one) throws IOException {
        try (AskedSample asked = new AskedSample(one.described(), one.table())) {
            return asked.leastMicroseconds(WARM_UP, ROUNDS);
        }
    }

    private static void physics(Map<String, Supplier<Object>> parts, Interpretation answer, SampleReading reading,
                                Nominal nominal) {
        Rivals rivals = new Rivals();
        ProfileCache profiles = new ProfileCache();
        RivalSituations situations = new RivalSituations(nominal, Handling.of(reading.sample()), reading);
        PhaseReader phases = new PhaseReader(reading.analyses().size(), reading.settings().judgement().alpha());
        List<GroupAnalysis> analyses = reading.analyses();
        List<GroupFinding> findings = answer.groups();
        parts.put("rivals", () -> each(analyses, i ->
            rivals.of(situations.of(analyses.get(i), findings.get(i).elements(), GroupBy.FEATURE))));
        parts.put("phases", () -> each(analyses, i -> phases.read(analyses.get(i), List.of())));
        parts.put("skin", () -> each(analyses, i ->
            SkinBalance.of(analyses.get(i), findings.get(i).elements(), reading.sample())));
        parts.put("depth", () -> DepthReader.of(analyses, findings, reading.sample(), 0.05, profiles));
        parts.put("diffraction", () ->
            DiffractionCheck.of(reading.sample().diffractionPhases(), reading.phases(), findings));
    }

    private static byte[] written(Interpretation answer) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            new AnswerFile(new Segregation(Sample.of(Optional.of("any"), Optional.empty()), Optional.empty(),
                Optional.empty(), answer), SpotSource.of(List.of()), Instant.EPOCH).json(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** The same answer as if nobody had thought of rivals, phases and depths. */
    private static Interpretation withoutPhysics(Interpretation a) {
        List<GroupFinding> groups = a.groups().stream().map(g -> new GroupFinding(g.by(), g.name(), g.spotCount(),
            g.particles(), g.beamEnergyKev(), g.sessions(), g.scope(), g.weakTwoParticles(), g.elements(),
            g.notMeasured(), g.explanationSet(), g.ratios(), g.jointTest(), g.foreign(), g.reference(), List.of(),
            g.caveats(), Optional.empty(), Optional.empty())).toList();
        return new Interpretation(a.nominal(), a.nominalFractions(), a.spotCount(), a.particleCount(), a.sessionCount(),
            a.settings(), groups, a.contrasts(), a.caveats(), a.cautions(), List.of(), List.of());
    }

    private static Object each(List<GroupAnalysis> analyses, IntFunction<Object> part) {
        Object last = analyses;
        for (int i = 0; i < analyses.size(); i++) {
            last = part.apply(i);
        }
        return last;
    }

    @Test
    void what_one_depth_profile_costs() {
        Material alloy = Material.byVolumes(Map.of(Element.of("Ag"), 0.719, Element.of("Cu"), 0.281));
        Map<String, Supplier<Object>> parts = new LinkedHashMap<>();
        Line line = LineTable.standard().line(Element.of("Ag"), "La").orElseThrow();
        parts.put("profile", () -> DepthProfile.of(alloy, line, 15));
        double us = least(parts).get("profile");
        System.out.printf(Locale.ROOT, "physics: one depth profile, worked out anew: %.2f us%n", us);
        assertThat(us).isPositive();
    }

    /** Least over rounds of the mean processor time of each part in us; the parts take turns within a round. */
    private static Map<String, Double> least(Map<String, Supplier<Object>> parts) {
        Map<String, double[]> rounds = new LinkedHashMap<>();
        parts.forEach((name, part) -> {
            rounds.put(name, new double[ROUNDS]);
            for (int i = 0; i < WARM_UP; i++) {
                assertThat(part.get()).isNotNull();
            }
        });
        for (int round = 0; round < ROUNDS; round++) {
            for (Map.Entry<String, Supplier<Object>> part : parts.entrySet()) {
                int hash = 0;
                long start = THREADS.getCurrentThreadCpuTime();
                for (int i = 0; i < REPEATS; i++) {
                    hash += System.identityHashCode(part.getValue().get());
                }
                rounds.get(part.getKey())[round] = (THREADS.getCurrentThreadCpuTime() - start) / 1e3 / REPEATS;
                assertThat(hash).isNotZero();
            }
        }
        Map<String, Double> least = new LinkedHashMap<>();
        rounds.forEach((name, own) -> least.put(name, Arrays.stream(own).min().orElseThrow()));
        return least;
    }
}
