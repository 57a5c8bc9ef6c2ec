package surfeit.http;

import java.util.ArrayList;
import java.util.List;
import surfeit.lab.Laboratory;

/** Puts the groups of routes into one table. */
final class Routes {
    private Routes() {
    }

    static RouteTable of(Laboratory laboratory, ServiceState state) {
        List<Route> routes = new ArrayList<>();
        routes.addAll(new ServiceRoutes(laboratory, state.readiness()).routes());
        routes.addAll(new ProblemRoutes().routes());
        routes.addAll(new SampleRoutes(laboratory).routes());
        routes.addAll(new SpotRoutes(laboratory).routes());
        routes.addAll(new ImportRoutes(laboratory).routes());
        routes.addAll(new AnswerRoutes(laboratory).routes());
        routes.addAll(new StoredInterpretationRoutes(laboratory).routes());
        routes.addAll(new ResultRoutes(laboratory).routes());
        routes.addAll(new EventRoutes(state).routes());
        routes.addAll(new CatalogueRoutes(laboratory).routes());
        routes.addAll(new ComparisonRoutes(laboratory).routes());
        routes.addAll(new PlanRoutes(laboratory).routes());
        routes.addAll(new SignalDepthRoutes(laboratory).routes());
        routes.addAll(new BackupRoutes(laboratory).routes());
        routes.addAll(new AccessRoutes(laboratory).routes());
        routes.addAll(new BoardRoutes(laboratory).routes());
        return new RouteTable(routes);
    }
}
