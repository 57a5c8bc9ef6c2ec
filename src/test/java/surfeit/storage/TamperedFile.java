package surfeit.storage;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;

/** Changes a database file behind the program's back, for tests. */
final class TamperedFile {
    private TamperedFile() {
    }

    static void change(Path file, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
             Statement statement = connection.createStatement()) {
            statement.executeUpdate(sql);
        }
    }
}
