package surfeit.http;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Every address of the service, in one table: the server, the access check and the documents all follow it. Immutable.
 */
public final class RouteTable {
    private final List<Route> routes;

    RouteTable(List<Route> routes) {
        this.routes = List.copyOf(routes);
        Set<String> seen = new LinkedHashSet<>();
        for (Route route : routes) {
            for (String path : route.paths()) {
                if (!seen.add(route.method() + " " + path)) {
                    throw new IllegalStateException("Route " + route.method() + " " + path + " stands twice.");
                }
            }
        }
    }

    public List<Route> routes() {
        return routes;
    }

    /** The methods an address has; empty where there is no such address. */
    Set<String> methodsAt(String address) {
        Set<String> methods = new TreeSet<>();
        for (Route route : routes) {
            if (route.paths().stream().anyMatch(path -> matches(path, address))) {
                methods.add(route.method());
            }
        }
        if (methods.contains("GET")) {
            methods.add("HEAD");
        }
        return methods;
    }

    /** The forms of an address that ends in a suffix nobody serves: {@code /v1/samples/A7/segregation.xlsx}. */
    Optional<List<Form>> formsBeside(String address) {
        int dot = address.lastIndexOf('.');
        if (dot <= address.lastIndexOf('/')) {
            return Optional.empty();
        }
        String plain = address.substring(0, dot);
        return routes.stream().filter(route -> route.suffixed() && matches(route.path(), plain)).map(Route::forms)
            .findFirst();
    }

    /** Whether an address is one of a page for eyes, which comes in no other form. */
    boolean isPage(String address) {
        return routes.stream().anyMatch(route -> route.forms().equals(List.of(Form.HTML)) && matches(route.path(),
            address));
    }

    private static boolean matches(String path, String address) {
        List<String> wanted = segments(path);
        List<String> found = segments(address);
        for (int i = 0; i < wanted.size(); i++) {
            if (wanted.get(i).startsWith("<")) {
                return found.size() > i;
            }
            if (i >= found.size() || !wanted.get(i).startsWith("{") && !wanted.get(i).equals(found.get(i))) {
                return false;
            }
        }
        return wanted.size() == found.size();
    }

    private static List<String> segments(String path) {
        List<String> segments = new ArrayList<>();
        for (String segment : path.split("/")) {
            if (!segment.isEmpty()) {
                segments.add(segment);
            }
        }
        return segments;
    }
}
