package surfeit.cli;

import java.nio.file.Path;
import surfeit.composition.AlloyCatalogue;
import surfeit.lab.Laboratory;
import surfeit.segregation.Interpreter;
import surfeit.storage.SqliteStore;

/** A lab opened on a data folder, to be closed again. */
record Opened(SqliteStore store, Laboratory laboratory) implements AutoCloseable {

    static Opened on(Settings settings) {
        return on(Path.of(settings.get(Setting.DATA)), settings);
    }

    static Opened on(Path folder, Settings settings) {
        SqliteStore store = SqliteStore.open(folder);
        return new Opened(store, new Laboratory(store, AlloyCatalogue.packaged(), new Interpreter(), detectionLimit(settings)));
    }

    /** The limit taken for "not detected", as a mass fraction. */
    static double detectionLimit(Settings settings) {
        return settings.number(Setting.DETECTION_LIMIT_MASS_PERCENT) / 100;
    }

    @Override
    public void close() {
        store.close();
    }
}
