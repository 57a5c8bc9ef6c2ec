package surfeit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class SourceFileTest {
    private static final Path PATH = Path.of("src", "main", "java", "surfeit", "spot", "Spot.java");

    @Test
    void the_package_is_the_folder_under_the_root() {
        assertThat(SourceFile.of(PATH, "").projectPackage()).isEqualTo("spot");
        assertThat(SourceFile.of(Path.of("src/main/java/surfeit/http/page/Page.java"), "").projectPackage())
            .isEqualTo("http");
        assertThat(SourceFile.of(Path.of("src/main/java/surfeit/Main.java"), "").projectPackage()).isEmpty();
    }

    @Test
    void imports_and_names_written_out_are_both_seen() {
        SourceFile file = SourceFile.of(PATH, """
            import java.util.List;
            import static surfeit.element.Element.of;
            import org.slf4j.*;
            class Spot { java.sql.Connection c = new com.sun.net.httpserver.Headers(surfeit.composition.Basis.MASS); }
            """);
        assertThat(file.namesUsed()).contains("java.util.List", "surfeit.element.Element.of", "org.slf4j.",
            "java.sql.Connection", "com.sun.net.httpserver.Headers", "surfeit.composition.Basis");
        assertThat(file.projectPackagesUsed()).containsExactlyInAnyOrder("element", "composition");
    }

    @Test
    void names_in_comments_and_texts_do_not_count() {
        SourceFile file = SourceFile.of(PATH, """
            /** See java.sql.Connection; never null. */
            class Spot { // java.sql.Driver
                String s = "java.sql.Date \\" null // not a comment";
                char c = '"'; int nullable = 1; /* null */ String t = "x";
            }
            """);
        assertThat(file.namesUsed()).isEmpty();
        assertThat(file.code()).doesNotContainPattern("\\bnull\\b").contains("nullable", "String t");
    }
}
