package surfeit.lab;

/** Finds things on record or refuses, in the same words everywhere. */
final class Lookups {
    private Lookups() {
    }

    static StoredSample sample(ReadAccess access, String name) {
        return access.sample(name).orElseThrow(() -> notFound("There is no sample \"" + name + "\"."));
    }

    static StoredSample sample(ReadAccess access, String name, long revision) {
        StoredSample present = sample(access, name);
        return access.sample(name, revision).orElseThrow(() -> notFound("Sample " + name + " has the revisions 1 to "
            + present.revision() + ", none " + revision + "."));
    }

    static StoredSpot spot(ReadAccess access, String id) {
        return access.spot(spotNumber(id)).orElseThrow(() -> noSpot(id));
    }

    static long spotNumber(String id) {
        return PublicId.number(PublicId.SPOT, id).orElseThrow(() -> noSpot(id));
    }

    static ImportReport importReport(ReadAccess access, String id) {
        return access.importReport(importNumber(id)).orElseThrow(() -> noImport(id));
    }

    static long importNumber(String id) {
        return PublicId.number(PublicId.IMPORT, id).orElseThrow(() -> noImport(id));
    }

    static StoredInterpretation interpretation(ReadAccess access, String id) {
        return access.interpretation(interpretationNumber(id)).orElseThrow(() -> noInterpretation(id));
    }

    static long interpretationNumber(String id) {
        return PublicId.number(PublicId.INTERPRETATION, id).orElseThrow(() -> noInterpretation(id));
    }

    static Token token(ReadAccess access, String id) {
        return access.tokens().stream().map(KeptToken::token).filter(token -> token.id().equals(id)).findFirst()
            .orElseThrow(() -> notFound("There is no token \"" + id + "\"."));
    }

    /** The number in a page key. @throws ProblemException if it is none */
    static long key(String text) {
        try {
            return Long.parseLong(text);
        } catch (NumberFormatException e) {
            throw wrongKey();
        }
    }

    /** The spot number in a page key. @throws ProblemException if it is none */
    static long spotKey(String text) {
        return PublicId.number(PublicId.SPOT, text).orElseThrow(Lookups::wrongKey);
    }

    /** The token number in a page key. @throws ProblemException if it is none */
    static long tokenKey(String text) {
        return PublicId.number(PublicId.TOKEN, text).orElseThrow(Lookups::wrongKey);
    }

    /** The number of a stored interpretation in a page key. @throws ProblemException if it is none */
    static long interpretationKey(String text) {
        return PublicId.number(PublicId.INTERPRETATION, text).orElseThrow(Lookups::wrongKey);
    }

    private static ProblemException wrongKey() {
        return new ProblemException(Problem.CURSOR_MISMATCH, "The cursor does not continue this list.");
    }

    private static ProblemException noSpot(String id) {
        return notFound("There is no spot \"" + id + "\".");
    }

    private static ProblemException noImport(String id) {
        return notFound("There is no import \"" + id + "\".");
    }

    private static ProblemException noInterpretation(String id) {
        return notFound("There is no stored interpretation \"" + id + "\".");
    }

    private static ProblemException notFound(String detail) {
        return new ProblemException(Problem.NOT_FOUND, detail);
    }
}
