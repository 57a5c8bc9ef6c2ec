package surfeit.rival;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import surfeit.preparation.Cautions;
import surfeit.report.PlainWords;
import surfeit.report.Signs;
import surfeit.rival.Rival.CouldExplain;
import surfeit.segregation.answer.GroupFinding;
import surfeit.segregation.answer.Interpretation;
import surfeit.segregation.answer.Verdict;

/** The invented sample of a small patch under a film of oil, in {@code sample-spectra-results}. */
class PatchAndOilTest {
    private static Interpretation answer;
    private static GroupFinding patch;

    @BeforeAll
    static void interpret() throws IOException {
        answer = InventedCase.interpret(InventedCase.read(
            Files.readAllBytes(Path.of("sample-spectra-results", "al-si-patch-oil.json"))));
        patch = answer.groups().get(0);
    }

    @Test
    void the_silicon_counts_as_enriched_and_keeps_that_word() {
        assertThat(patch.elements()).filteredOn(finding -> finding.element().symbol().equals("Si")).singleElement()
            .satisfies(finding -> assertThat(finding.outcome().verdict()).isEqualTo(Verdict.ENRICHED));
    }

    @Test
    void the_oil_could_do_it_alone_and_stands_first() {
        assertThat(patch.rivals().get(0)).satisfies(oil -> {
            assertThat(oil.code()).isEqualTo(Cause.RESIDUE);
            assertThat(oil.cause()).contains("silicone oil");
            assertThat(oil.couldExplain()).isEqualTo(CouldExplain.YES);
            assertThat(oil.assumes()).contains("C ").contains("O ");
        });
    }

    @Test
    void the_size_of_the_patch_is_named_with_bounds_for_what_it_may_hold_itself() {
        assertThat(patch.rivals()).filteredOn(rival -> rival.code() == Cause.SMALL_PATCH).singleElement()
            .satisfies(size -> {
            assertThat(size.couldExplain()).isEqualTo(CouldExplain.IN_PART);
            assertThat(size.assumes()).contains("1.2 \u00b5m").contains("the patch itself would hold");
        });
    }

    @Test
    void the_summary_names_the_strongest() {
        assertThat(String.join(" ", new PlainWords(answer, Signs.ASCII).summary()))
            .contains("Could alone be explained by").contains("silicone oil");
    }

    @Test
    void hot_oil_melt_powder_and_solvent_bring_their_cautions() {
        List<String> cautions = answer.cautions();
        assertThat(cautions).anySatisfy(note -> assertThat(note).startsWith("Hot oil"))
            .anySatisfy(note -> assertThat(note).startsWith("Fine metal powder"))
            .anySatisfy(note -> assertThat(note).startsWith("Flammable solvents"));
        assertThat(cautions).last().isEqualTo(Cautions.DEFERS);
    }
}
