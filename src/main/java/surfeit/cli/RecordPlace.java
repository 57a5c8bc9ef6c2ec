package surfeit.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import surfeit.lab.BackupReport;
import surfeit.lab.ReadAccess;
import surfeit.storage.DatabaseAddress;
import surfeit.storage.MoveReport;
import surfeit.storage.PostgresBackup;
import surfeit.storage.PostgresStore;
import surfeit.storage.RecordDatabase;
import surfeit.storage.RecordFile;
import surfeit.storage.RecordMove;
import surfeit.storage.RecordStore;
import surfeit.storage.SqliteBackup;
import surfeit.storage.SqliteStore;

/** Where the settings say that the record is kept: a database where one is named, else a folder. */
final class RecordPlace {
    private final Path folder;
    private final Optional<DatabaseAddress> database;
    private final int connections;
    private final int writesWaitingMax;

    private RecordPlace(Settings settings) {
        this.folder = Path.of(settings.get(Setting.DATA));
        this.database = settings.stated(Setting.DATABASE_URL).map(url -> new DatabaseAddress(url,
            settings.stated(Setting.DATABASE_USER), settings.stated(Setting.DATABASE_PASSWORD)));
        this.connections = settings.whole(Setting.DATABASE_CONNECTIONS);
        this.writesWaitingMax = settings.whole(Setting.WRITES_WAITING_MAX);
    }

    static RecordPlace of(Settings settings) {
        return new RecordPlace(settings);
    }

    /** Opens it for use, making it where it is missing. */
    RecordStore open() {
        return database.isPresent() ? PostgresStore.open(database.get(), connections, writesWaitingMax)
            : SqliteStore.open(folder, writesWaitingMax);
    }

    /** Looks into it from outside, also while services work on it. */
    <T> T read(Function<ReadAccess, T> work) {
        return database.isPresent() ? RecordDatabase.read(database.get(), work) : RecordFile.read(folder, work);
    }

    /** Copies it into one file, also while services work on it. */
    BackupReport backup(Path file, Instant when) {
        return database.isPresent() ? PostgresBackup.take(database.get(), file, when)
            : SqliteBackup.take(folder, file, when);
    }

    /** Moves the record from the folder to the database, or back. */
    MoveReport move(boolean toDatabase, Instant when) {
        DatabaseAddress address = database.orElseThrow(() -> new SettingsException(List.of(
            "move needs both places: the folder as data and the database as database-url, which is not set")));
        return toDatabase ? RecordMove.toDatabase(folder, address, when) : RecordMove.toFolder(address, folder, when);
    }

    /** The folder. @throws SettingsException where the record is in a database, which the command cannot work on */
    Path requireFolder(String command, String instead) {
        if (database.isPresent()) {
            throw new SettingsException(List.of(command + " works on a data folder, and database-url names a database: "
                + instead));
        }
        return folder;
    }

    /** In words for whoever runs a command. */
    @Override
    public String toString() {
        return database.map(DatabaseAddress::toString).orElseGet(folder::toString);
    }
}
