package surfeit.cli;

import java.nio.file.Path;
import surfeit.composition.AlloyCatalogue;
import surfeit.lab.Laboratory;
import surfeit.segregation.Interpreter;
import surfeit.storage.RecordStore;
import surfeit.storage.SqliteStore;

/** A lab opened on its record, to be closed again. */
record Opened(RecordStore store, Laboratory laboratory) implements AutoCloseable {

    static Opened on(Settings settings) {
        return on(RecordPlace.of(settings).open(), settings);
    }

    static Opened on(Path folder, Settings settings) {
        return on(SqliteStore.open(folder), settings);
    }

    private static Opened on(RecordStore store, Settings settings) {
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
