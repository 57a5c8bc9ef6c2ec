package surfeit.storage;

import java.sql.SQLException;

/** Carries a failure of the database engine out of code that may not declare it. */
final class EngineFailure extends RuntimeException {

    EngineFailure(SQLException cause) {
        super(cause);
    }
}
