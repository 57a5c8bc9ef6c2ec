package surfeit.element;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ReferenceTableTest {

    @Test
    void a_row_without_a_source_refuses_the_whole_table() {
        assertThatThrownBy(() -> new ReferenceTable("weights.csv", "",
            List.of(Map.of("symbol", "Ag", "source", "CIAAW"), Map.of("symbol", "Cu", "source", " "))))
            .hasMessage("Row 2 of weights.csv names no source.");
        assertThatThrownBy(() -> new ReferenceTable("weights.csv", "", List.of(Map.of("symbol", "Ag"))))
            .hasMessage("Row 1 of weights.csv names no source.");
    }

    @Test
    void a_table_that_is_not_packaged_is_named() {
        assertThatThrownBy(() -> ReferenceTable.packaged("absent.csv"))
            .hasMessage("The program's jar lacks /shared/reference/absent.csv.");
    }

    @Test
    void cells_are_read_by_column_name_also_where_they_hold_commas() {
        assertThat(ReferenceTable.packaged("elements.csv").rows().get(46))
            .containsEntry("symbol", "Ag").containsEntry("atomic_weight", "107.87")
            .hasEntrySatisfying("source", source -> assertThat(source).contains("94 (2022) 573-600, Table 1"));
    }

    @Test
    void rows_cannot_be_changed() {
        ReferenceTable table = ReferenceTable.packaged("elements.csv");
        assertThatThrownBy(() -> table.rows().get(0).clear()).isInstanceOf(UnsupportedOperationException.class);
    }
}
