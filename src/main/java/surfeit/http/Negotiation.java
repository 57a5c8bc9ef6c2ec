package surfeit.http;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Picks the form of an answer from what the client accepts (RFC 9110, section 12.5.1). */
final class Negotiation {
    private Negotiation() {
    }

    /** One range of an {@code Accept} field: {@code text/*;q=0.5}. */
    private record Range(String type, String subtype, double quality) {
        private int fit(String mediaType) {
            int slash = mediaType.indexOf('/');
            boolean sameType = type.equals(mediaType.substring(0, slash));
            boolean sameSubtype = subtype.equals(mediaType.substring(slash + 1));
            return sameType && sameSubtype ? 3 : sameType && subtype.equals("*") ? 2 : type.equals("*") ? 1 : 0;
        }
    }

    /**
     * The accepted form with the highest quality; the offer's order decides between equals. Empty where none is
     * accepted.
     */
    static Optional<Form> choose(List<Form> offered, String accept) {
        if (accept == null || accept.isBlank() || accept.equals("*/*")) {
            return Optional.of(offered.get(0));
        }
        List<Range> ranges = ranges(accept);
        Form best = null;
        double bestQuality = 0;
        for (Form form : offered) {
            double quality = form == Form.FILE ? 1 : quality(form.mediaType(), ranges);
            if (quality > bestQuality) {
                best = form;
                bestQuality = quality;
            }
        }
        return Optional.ofNullable(best);
    }

    /** The quality of the range that names the media type most closely. */
    private static double quality(String mediaType, List<Range> ranges) {
        int fit = 0;
        double quality = 0;
        for (Range range : ranges) {
            int found = range.fit(mediaType);
            if (found > fit) {
                fit = found;
                quality = range.quality();
            }
        }
        return quality;
    }

    private static List<Range> ranges(String accept) {
        List<Range> ranges = new ArrayList<>();
        for (String text : accept.toLowerCase(Locale.ROOT).split(",")) {
            String[] parts = text.split(";");
            int slash = parts.length == 0 ? -1 : parts[0].indexOf('/');
            if (slash > 0) {
                ranges.add(new Range(parts[0].substring(0, slash).strip(), parts[0].substring(slash + 1).strip(),
                    quality(parts)));
            }
        }
        return ranges;
    }

    private static double quality(String[] parts) {
        for (int i = 1; i < parts.length; i++) {
            String part = parts[i].strip();
            if (part.startsWith("q=")) {
                try {
                    return Math.max(0, Math.min(1, Double.parseDouble(part.substring(2))));
                } catch (NumberFormatException e) {
                    return 0;
                }
            }
        }
        return 1;
    }
}
