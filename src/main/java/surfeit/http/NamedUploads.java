package surfeit.http;

import java.time.Instant;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import surfeit.element.Spelling;
import surfeit.lab.Names;
import surfeit.lab.Problem;
import surfeit.lab.ProblemException;
import surfeit.lab.PublicId;

/**
 * Uploads that were given a name by who sent them, so that somebody can ask how far they have come before there is an
 * answer: those that run, and the last ones that are over. In memory. Thread-safe.
 */
final class NamedUploads {
    /** Uploads that are over and still known. Judgement. */
    private static final int OVER_MAX = 100;

    private final Map<String, OngoingUpload> byName = new LinkedHashMap<>();

    /** True for a text that can be such a name; an id of an import never is one. */
    static boolean isName(String text) {
        return Names.isSampleName(text) && !text.startsWith(PublicId.IMPORT);
    }

    /** @throws ProblemException name-invalid, also where an upload of that name still runs */
    synchronized OngoingUpload begin(String name, String sample, Instant now) {
        if (!isName(name)) {
            throw new ProblemException(Problem.NAME_INVALID, "An upload is named with 1 to 64 of the characters"
                + " A-Z a-z 0-9 . _ -, not with dots only, and not beginning with " + PublicId.IMPORT + "; got "
                + Spelling.quoted(name) + ".");
        }
        if (byName.containsKey(name) && !byName.get(name).stand().isOver()) {
            throw new ProblemException(Problem.NAME_INVALID, "An upload named " + Spelling.quoted(name)
                + " is still under way; give this one another name.");
        }
        byName.remove(name);
        OngoingUpload upload = new OngoingUpload(sample, now);
        byName.put(name, upload);
        forget();
        return upload;
    }

    private void forget() {
        long over = byName.values().stream().filter(upload -> upload.stand().isOver()).count();
        for (Iterator<OngoingUpload> each = byName.values().iterator(); each.hasNext() && over > OVER_MAX;) {
            if (each.next().stand().isOver()) {
                each.remove();
                over--;
            }
        }
    }

    synchronized Optional<OngoingUpload> find(String name) {
        return Optional.ofNullable(byName.get(name));
    }
}
