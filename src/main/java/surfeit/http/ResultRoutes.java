package surfeit.http;

import java.util.List;
import surfeit.lab.Laboratory;

/** Flat rows for dashboards and statistics programs. */
final class ResultRoutes {
    ResultRoutes(Laboratory laboratory) {
    }

    List<Route> routes() {
        return List.of();
    }
}
