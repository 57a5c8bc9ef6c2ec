package surfeit.preparation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.element.ReferenceTable;
import surfeit.spot.PreparationStep;
import surfeit.xray.ResidueTable;

class VocabularyTest {

    @ParameterizedTest
    @CsvSource({"colloidal silica, colloidal silica", "polished with Colloidal-Silica (40 nm), colloidal silica",
        "mit Diamantpaste poliert, diamond", "SILIKONÖL, silicone oil", "Silikonoel, silicone oil",
        "SiC-Papier P1200, silicon carbide", "5 % HF in water, hydrofluoric acid",
        "geätzt mit Flusssäure, hydrofluoric acid",
        "Kroll's reagent, kroll's reagent", "Gasverdüst unter Argon, gas atomised"})
    void a_word_of_the_lab_is_found_in_either_language(String text, String word) {
        assertThat(Vocabulary.standard().find(text, false)).extracting(Substance::word).contains(word);
    }

    @Test
    void of_phrases_that_start_alike_the_longest_counts() {
        assertThat(words("melted in hot silicone oil", false)).contains("hot silicone oil")
            .doesNotContain("silicone oil");
    }

    @Test
    void a_bare_material_names_a_mount_only_where_a_mount_is_asked_for() {
        assertThat(words("copper", true)).containsExactly("copper stub");
        assertThat(words("copper", false)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"oilskin coat", "hff", "stubborn", "unobtainium", "3", "--"})
    void part_of_a_word_or_an_unknown_word_is_nothing(String text) {
        assertThat(Vocabulary.standard().find(text, true)).isEmpty();
    }

    private static List<String> words(String text, boolean asMount) {
        return Vocabulary.standard().find(text, asMount).stream().map(Substance::word).toList();
    }

    @Test
    void unknown_texts_are_kept_as_they_came() {
        Handling handling = Handling.of(Optional.of("Halter 7b"), List.of(
            new PreparationStep("polished", Optional.of("paste no. 3")),
            new PreparationStep("zapped", Optional.empty())));
        assertThat(handling.unknown()).containsExactly("Halter 7b", "paste no. 3", "zapped");
        assertThat(handling.substances()).extracting(Substance::word).containsExactly("polished");
    }

    @Test
    void every_residue_and_hazard_it_names_is_in_its_table() {
        Set<String> hazards = ReferenceTable.vocabulary("cautions.csv").rows().stream().map(row -> row.get("hazard"))
            .collect(Collectors.toSet());
        assertThat(Vocabulary.standard().substances()).isNotEmpty().allSatisfy(substance -> {
            assertThat(hazards).containsAll(substance.hazards());
            substance.residue().ifPresent(id -> assertThat(ResidueTable.standard().byId(id)).as(id).isPresent());
        });
    }

    @Test
    void no_phrase_stands_for_two_substances() {
        Set<String> seen = new HashSet<>();
        assertThat(Vocabulary.standard().substances().stream().flatMap(VocabularyTest::phrases)
            .map(phrase -> phrase.toLowerCase(Locale.ROOT)).filter(phrase -> !seen.add(phrase))).isEmpty();
    }

    @Test
    void every_phrase_finds_its_own_substance() {
        assertThat(Vocabulary.standard().substances()).allSatisfy(substance -> assertThat(phrases(substance))
            .allSatisfy(phrase -> assertThat(Vocabulary.standard().find(phrase, true)).as(phrase).contains(substance)));
    }

    private static Stream<String> phrases(Substance substance) {
        return Stream.concat(Stream.of(substance.word()), substance.synonyms().stream());
    }
}
