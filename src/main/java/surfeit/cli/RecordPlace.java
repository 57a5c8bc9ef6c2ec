package surfeit.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import surfeit.lab.ReadAccess;
import surfeit.storage.DatabaseAddress;
import surfeit.storage.PostgresStore;
import surfeit.storage.RecordDatabase;
import surfeit.storage.RecordFile;
import surfeit.storage.RecordStore;
import surfeit.storage.SqliteStore;

/** Where the settings say that the record is kept: a database where one is named, else a folder. */
final class RecordPlace {
    private final Path folder;
    private final Optional<DatabaseAddress> database;
    private final int connections;

    private RecordPlace(Settings settings) {
        this.folder = Path.of(settings.get(Setting.DATA));
        this.database = settings.stated(Setting.DATABASE_URL).map(url -> new DatabaseAddress(url,
            settings.stated(Setting.DATABASE_USER), settings.stated(Setting.DATABASE_PASSWORD)));
        this.connections = settings.whole(Setting.DATABASE_CONNECTIONS);
    }

    static RecordPlace of(Settings settings) {
        return new RecordPlace(settings);
    }

    /** Opens it for use, making it where it is missing. */
    RecordStore open() {
        return database.isPresent() ? PostgresStore.open(database.get(), connections) : SqliteStore.open(folder);
    }

    /** Looks into it from outside, also while services work on it. */
    <T> T read(Function<ReadAccess, T> work) {
        return database.isPresent() ? RecordDatabase.read(database.get(), work) : RecordFile.read(folder, work);
    }

    /** The folder. @throws SettingsException where the record is in a database, which the command cannot work on */
    Path requireFolder(String command, String instead) {
        if (database.isPresent()) {
            throw new SettingsException(List.of(command + " works on a data folder, and database-url names a database: "
                + instead));
        }
        return folder;
    }
}
