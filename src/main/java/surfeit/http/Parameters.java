package surfeit.http;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.regex.Pattern;
import surfeit.http.json.Nearest;
import surfeit.lab.PageRequest;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;

/** The query parameters of one request, each known to its route and given once. Not thread-safe. */
final class Parameters {
    private static final int PAGE_SIZE_MAX = 5000;
    /** A number as JSON writes it. */
    static final Pattern NUMBER = Pattern.compile("-?(0|[1-9]\\d{0,20})(\\.\\d{1,40})?([eE][+-]?\\d{1,3})?");
    private static final int PAGE_SIZE = 100;

    private final Map<String, String> values = new LinkedHashMap<>();

    /** @throws ProblemException unknown-parameter for a name the route does not know, or one not given just once */
    Parameters(Map<String, List<String>> given, Collection<String> known) {
        this(given, known, "a query parameter of this address");
    }

    /** @param what what the names are, for refusals */
    Parameters(Map<String, List<String>> given, Collection<String> known, String what) {
        for (Map.Entry<String, List<String>> parameter : given.entrySet()) {
            String name = parameter.getKey();
            if (!known.contains(name)) {
                throw new ProblemException(Problem.UNKNOWN_PARAMETER, "\"" + name + "\" is not " + what
                    + Nearest.hint(name, new TreeSet<>(known)));
            }
            if (parameter.getValue().size() != 1) {
                throw new ProblemException(Problem.UNKNOWN_PARAMETER, "The query parameter \"" + name + "\" is given "
                    + parameter.getValue().size() + " times; one value is expected.");
            }
            if (parameter.getValue().get(0).indexOf(0) >= 0) {
                throw new ProblemException(Problem.VALUE_OUT_OF_RANGE, "Expected a text without zero characters (%00) for "
                    + "the query parameter \"" + name + "\".");
            }
            values.put(name, parameter.getValue().get(0));
        }
    }

    /** The value as it came; empty where it is not given. */
    Optional<String> text(String name) {
        return Optional.ofNullable(values.get(name));
    }

    /** One of a closed list of words. @throws ProblemException value-out-of-range */
    <E> Optional<E> oneOf(String name, E[] all, Function<E, String> word) {
        return text(name).map(text -> Arrays.stream(all).filter(each -> word.apply(each).equals(text)).findFirst()
            .orElseThrow(() -> {
                List<String> words = Arrays.stream(all).map(word).toList();
                return refused(name, String.join(", ", words), text, Nearest.hint(text, words));
            }));
    }

    boolean flag(String name) {
        return oneOf(name, new Boolean[] {true, false}, String::valueOf).orElse(false);
    }

    /** A number that passes a check, which refuses by {@link IllegalArgumentException}. */
    OptionalDouble number(String name, DoubleUnaryOperator check) {
        Optional<String> text = text(name);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        if (!NUMBER.matcher(text.get()).matches()) {
            throw refused(name, "a number", text.get(), ".");
        }
        try {
            return OptionalDouble.of(check.applyAsDouble(Double.parseDouble(text.get())));
        } catch (IllegalArgumentException e) {
            throw new ProblemException(Problem.VALUE_OUT_OF_RANGE, e.getMessage());
        }
    }

    long wholeNumber(String name, long otherwise, long least, long most) {
        return text(name).map(text -> wholeNumber(name, text, least, most)).orElse(otherwise);
    }

    /** Reads a whole number that came under a name. @throws ProblemException value-out-of-range */
    static long wholeNumber(String name, String text, long least, long most) {
        try {
            long value = Long.parseLong(text);
            if (value >= least && value <= most) {
                return value;
            }
        } catch (NumberFormatException e) {
            // told below, as a number out of range is
        }
        throw refused(name, "a whole number from " + least + " to " + most, text, ".");
    }

    /** The page wanted of a list. @param list the list and its filters, to which a cursor is bound */
    PageRequest page(List<String> list) {
        int size = (int) wholeNumber("page_size", PAGE_SIZE, 1, PAGE_SIZE_MAX);
        return new PageRequest(size, text("cursor").map(cursor -> Cursor.key(list, cursor)));
    }

    /** The list this request asks for: its address and every filter, without page and cursor. */
    List<String> list(String address) {
        List<String> list = new ArrayList<>(List.of(address));
        for (String name : new TreeSet<>(values.keySet())) {
            if (!name.equals("cursor") && !name.equals("page_size")) {
                list.add(name + "=" + values.get(name));
            }
        }
        return list;
    }

    private static ProblemException refused(String name, String expected, String found, String end) {
        return new ProblemException(Problem.VALUE_OUT_OF_RANGE,
            "Expected " + name + " to be " + expected + "; got \"" + found + "\"" + end);
    }
}
