package surfeit.http;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * One address of the service: method, path, who may use it, what it takes and gives, and what answers.
 *
 * @param method     GET, PUT, POST or DELETE
 * @param path       with parameters in braces: {@code /v1/samples/{sample}}
 * @param scope      what the caller must be allowed
 * @param forms      the forms it answers in, the preferred one first
 * @param suffixed   true where a suffix of the path can ask for a form
 * @param parameters query parameters it knows
 * @param takes      media types of bodies it reads; none for a GET
 * @param isStream   true where an answer goes on until somebody ends it
 */
public record Route(String method, String path, Scope scope, List<Form> forms, boolean suffixed, Set<String> parameters,
                    List<Form> takes, boolean isStream, Handler handler) {
    /** Answers a request. */
    public interface Handler {
        void answer(Exchange exchange) throws Exception;
    }

    public Route {
        forms = List.copyOf(forms);
        takes = List.copyOf(takes);
        parameters = Set.copyOf(parameters);
        if (scope == null || handler == null || forms.isEmpty()) {
            throw new IllegalArgumentException(method + " " + path + " needs a scope, a form and a handler.");
        }
    }

    static Builder get(String path, Scope scope) {
        return new Builder("GET", path, scope);
    }

    static Builder delete(String path, Scope scope) {
        return new Builder("DELETE", path, scope);
    }

    static Builder put(String path, Scope scope) {
        return new Builder("PUT", path, scope).takes(Form.JSON);
    }

    static Builder post(String path, Scope scope) {
        return new Builder("POST", path, scope).takes(Form.JSON);
    }

    /** Its path as documents and metrics write it: {@code /shared/{path}}. */
    String pattern() {
        return path.replace('<', '{').replace('>', '}');
    }

    /** The form its own path asks for by its end, as {@code rejected.csv} does; it wins over {@code Accept}. */
    Optional<Form> formOfPath() {
        return forms.stream().filter(form -> path.endsWith(form.suffix())).findFirst();
    }

    /** The paths it answers at: its own, and one for each suffix. */
    List<String> paths() {
        List<String> paths = new ArrayList<>();
        paths.add(path);
        if (suffixed) {
            forms.forEach(form -> paths.add(path + form.suffix()));
        }
        return paths;
    }

    /** Puts a route together. */
    static final class Builder {
        private final String method;
        private final String path;
        private final Scope scope;
        private List<Form> forms = List.of(Form.JSON);
        private List<Form> takes = List.of();
        private final Set<String> parameters = new LinkedHashSet<>();
        private boolean suffixed;
        private boolean isStream;

        private Builder(String method, String path, Scope scope) {
            this.method = method;
            this.path = path;
            this.scope = scope;
        }

        Builder forms(Form... all) {
            forms = List.of(all);
            return this;
        }

        Builder suffixed(Form... all) {
            suffixed = true;
            return forms(all);
        }

        Builder takes(Form... all) {
            takes = List.of(all);
            return this;
        }

        Builder parameters(String... names) {
            parameters.addAll(List.of(names));
            return this;
        }

        /** Its answers go on until somebody ends them: they are counted as streams, not as requests. */
        Builder stream() {
            isStream = true;
            return this;
        }

        Route to(Handler handler) {
            return new Route(method, path, scope, forms, suffixed, parameters, takes, isStream, handler);
        }
    }
}
