package surfeit.rival;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import surfeit.rival.Rival.CouldExplain;
import surfeit.segregation.answer.Caveat;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.Verdict;

/**
 * Invented traps, each with a known cause behind its shift, and invented clean, well described measurements.
 *
 * <p>Every trap must have its cause named at the strength it asks for; no clean measurement may show a "yes". The sizes
 * of the traps were chosen with the program's own bounds at hand: the rates say that the causes are told apart, not how
 * often they occur in a lab.
 */
class RivalCasesTest {
    private static final int LEAST_TRAPS = 40;
    private static final int LEAST_CLEAN = 20;

    static List<InventedCase> traps() {
        return InventedCase.read("traps.json");
    }

    static List<InventedCase> clean() {
        return InventedCase.read("clean.json");
    }

    @ParameterizedTest
    @MethodSource("traps")
    void the_cause_behind_a_trap_is_named(InventedCase trap) {
        assertThat(named(trap)).as(told(trap)).isTrue();
    }

    @ParameterizedTest
    @MethodSource("clean")
    void a_clean_measurement_shows_no_rival_that_could_do_it_alone(InventedCase clean) {
        assertThat(clean.interpret().groups()).allSatisfy(group -> assertThat(group.rivals()).as(group.name())
            .noneMatch(rival -> rival.couldExplain() == CouldExplain.YES));
    }

    @ParameterizedTest
    @MethodSource("clean")
    void a_clean_measurement_shows_no_warning(InventedCase clean) {
        Interpretation answer = clean.interpret();
        assertThat(answer.caveats()).noneMatch(caveat -> caveat.weight() == Caveat.Weight.WARNING);
        assertThat(answer.groups()).allSatisfy(group -> assertThat(group.caveats())
            .noneMatch(caveat -> caveat.weight() == Caveat.Weight.WARNING));
    }

    @Test
    void every_cause_has_its_trap() {
        Set<String> trapped = traps().stream().map(InventedCase::expectedCode)
            .collect(Collectors.toCollection(TreeSet::new));
        assertThat(trapped).containsExactlyInAnyOrderElementsOf(
            List.of(Cause.values()).stream().map(Cause::code).toList());
    }

    @Test
    void rates_of_hits_and_false_alarms_are_told() {
        List<InventedCase> traps = traps();
        List<InventedCase> clean = clean();
        long hits = traps.stream().filter(RivalCasesTest::named).count();
        long first = traps.stream().filter(RivalCasesTest::namedFirst).count();
        long alarms = clean.stream().filter(RivalCasesTest::alarms).count();
        long flagged = clean.stream().filter(RivalCasesTest::flagged).count();
        System.out.printf(Locale.ROOT,
            "rivals on invented data: %d of %d traps have their cause named (%.1f %%), %d first; "
                + "%d of %d clean measurements (%d of them flagged) show a false alarm (%.1f %%)%n", hits, traps.size(),
            100.0 * hits / traps.size(), first, alarms, clean.size(), flagged, 100.0 * alarms / clean.size());
        assertThat(traps).hasSizeGreaterThanOrEqualTo(LEAST_TRAPS);
        assertThat(clean).hasSizeGreaterThanOrEqualTo(LEAST_CLEAN);
        assertThat(hits).isEqualTo(traps.size());
        assertThat(alarms).isZero();
        assertThat(flagged).isGreaterThan(clean.size() / 2);
    }

    private static boolean alarms(InventedCase clean) {
        return clean.interpret().groups().stream().flatMap(group -> group.rivals().stream())
            .anyMatch(rival -> rival.couldExplain() == CouldExplain.YES);
    }

    private static boolean flagged(InventedCase clean) {
        return clean.interpret().groups().stream().flatMap(group -> group.elements().stream())
            .map(finding -> finding.outcome().verdict())
            .anyMatch(verdict -> verdict == Verdict.ENRICHED || verdict == Verdict.DEPLETED);
    }

    private static boolean named(InventedCase trap) {
        return trap.group(trap.interpret()).rivals().stream().anyMatch(rival -> fits(trap, rival));
    }

    /** The cause stands before all others. */
    private static boolean namedFirst(InventedCase trap) {
        List<Rival> rivals = trap.group(trap.interpret()).rivals();
        return !rivals.isEmpty() && fits(trap, rivals.get(0));
    }

    private static boolean fits(InventedCase trap, Rival rival) {
        return rival.code().code().equals(trap.expectedCode())
            && rival.couldExplain().compareTo(trap.expectedStrength()) >= 0;
    }

    private static String told(InventedCase trap) {
        GroupFinding group = trap.group(trap.interpret());
        return group.elements().stream().map(e -> e.element() + " " + e.outcome().verdict().word()).toList() + " "
            + group.rivals();
    }
}
